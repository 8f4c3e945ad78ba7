import { useEffect, useRef } from 'preact/hooks'

/**
 * Gives the focus to an element whenever the key changes and what had the focus
 * is gone: answering takes the pressed button away, and a keyboard or a screen
 * reader must not be sent back to the top of the page.
 */
export function useFocusIfLost<T extends HTMLElement>(key: unknown) {
  const element = useRef<T>(null)
  useEffect(() => {
    if (document.activeElement === document.body) element.current?.focus({ preventScroll: true })
  }, [key])
  return element
}
