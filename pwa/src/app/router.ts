import { computed, signal } from '@preact/signals'

/** The address shown, without the host: "/drill", "/field-book/lesson/3". */
export const path = signal(location.pathname)

/** The first part names the screen; the rest is the screen's own. "" is Home. */
export const place = computed(() => {
  const [screen = '', ...rest] = path.value.split('/').filter(Boolean)
  return { screen, rest }
})

/** Called before leaving a screen; returns false to stay (an item is open). */
let mayLeave: () => boolean = () => true

export function guardLeaving(ask: () => boolean): () => void {
  mayLeave = ask
  return () => {
    mayLeave = () => true
  }
}

export function go(to: string): void {
  if (to === path.value || !mayLeave()) return
  history.pushState(null, '', to)
  arrive()
}

/** Turns plain links within the app into moves without a page load. */
export function followLinks(): void {
  addEventListener('popstate', arrive)
  document.addEventListener('click', (event) => {
    const link = (event.target as Element).closest?.('a[href]')
    if (!(link instanceof HTMLAnchorElement) || !isOurs(event, link)) return
    event.preventDefault()
    go(link.pathname)
  })
}

function isOurs(event: MouseEvent, link: HTMLAnchorElement): boolean {
  const wantsNewPage = event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0
  const samePage = link.hash !== '' && link.pathname === path.value
  return !wantsNewPage && !samePage && !link.target && !link.download && link.origin === location.origin
}

function arrive(): void {
  path.value = location.pathname
  scrollTo(0, 0)
}
