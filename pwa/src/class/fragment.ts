import { signal } from '@preact/signals'

/** The token that the address brought, if any. */
export const token = signal<string | undefined>(undefined)

/**
 * Takes a token from the address, where a code put it behind the hash, and
 * removes it there: it is never sent to a server by itself, and neither a
 * picture of the screen nor the history keeps it.
 */
function takeFragment(): void {
  const found = location.hash.slice(1)
  if (!/^[0-9a-z_-]{16,}$/i.test(found)) return
  history.replaceState(history.state, '', location.pathname + location.search)
  token.value = found
}

/** Follows the address for as long as a screen that takes tokens is shown. */
export function watchFragment(): () => void {
  takeFragment()
  addEventListener('hashchange', takeFragment)
  return () => {
    removeEventListener('hashchange', takeFragment)
    token.value = undefined
  }
}
