const SOON_MS = 100 // chosen by us: no one sees a page that paints less often

/** Does something once the page has painted what it shows now; soon, where it paints nothing, being out of sight. */
export function oncePainted(then: () => void): void {
  let done = false
  const once = () => {
    if (!done) then()
    done = true
  }
  requestAnimationFrame(() => setTimeout(once))
  setTimeout(once, SOON_MS)
}
