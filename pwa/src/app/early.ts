/** What notes a button that is tapped before the app stands: written into the page (build/boot.ts). */
interface Early { (event: Event): void; tapped?: HTMLElement | null }

/** Does what a button promised that was tapped before the app stood. */
export function makeGood(): void {
  const { lintelEarly } = globalThis as { lintelEarly?: Early }
  if (!lintelEarly) return
  removeEventListener('click', lintelEarly)
  if (lintelEarly.tapped?.isConnected) lintelEarly.tapped.click()
}
