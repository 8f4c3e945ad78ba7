/** Brings an element to the top of the page, once what was just changed has been drawn. */
export function rise(selector: string): void {
  requestAnimationFrame(() => requestAnimationFrame(() => document.querySelector(selector)?.scrollIntoView()))
}
