import { computed, signal } from '@preact/signals'
import { oncePainted } from '../ui/painted'

/** The address shown, without the host: "/drill", "/field-book/lesson/3". */
const path = signal(location.pathname)

/** The address that was tapped: shown one picture later, so that the tap is answered at once, however long a screen takes to make. */
const heading = signal(location.pathname)

/** The first part names the screen; the rest is the screen's own. "" is Home. */
export const place = computed(() => {
  const [screen = '', ...rest] = path.value.split('/').filter(Boolean)
  return { screen, rest }
})

/** The screen that one is on the way to, or at. */
export const headingFor = computed(() => heading.value.split('/').find(Boolean) ?? '')

export function go(to: string): void {
  if (to === heading.value) return
  history.pushState(null, '', to)
  setOut()
}

/** Turns plain links within the app into moves without a page load. */
export function followLinks(): void {
  addEventListener('popstate', setOut)
  document.addEventListener('click', (event) => {
    const link = (event.target as Element).closest?.('a[href]')
    if (!(link instanceof HTMLAnchorElement) || !isOurs(event, link)) return
    event.preventDefault()
    go(link.pathname)
  })
}

function isOurs(event: MouseEvent, link: HTMLAnchorElement): boolean {
  const wantsNewPage = event.metaKey || event.ctrlKey || event.shiftKey || event.button !== 0
  const samePage = link.hash !== '' && link.pathname === heading.value
  return !wantsNewPage && !samePage && !link.target && !link.download && link.origin === location.origin
}

function setOut(): void {
  heading.value = location.pathname
  oncePainted(arrive)
}

function arrive(): void {
  if (path.value === heading.value) return // there already: who set out later has come first
  path.value = heading.value
  scrollTo(0, 0)
}
