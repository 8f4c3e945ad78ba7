import type { ComponentChildren } from 'preact'
import { useLayoutEffect, useRef } from 'preact/hooks'
import { words } from '../words/frame'
import './caution.css'

/** The standing caution of Size-up, its reading and Prop. It cannot be put away. */
export function Caution({ children }: { children?: ComponentChildren }) {
  const note = useRef<HTMLParagraphElement>(null)
  useLayoutEffect(() => tellHeight(note.current!), [])
  return (
    <p ref={note} class="caution" role="note">
      <strong>{words.caution.trainingOnly}</strong> {words.caution.notAtIncident}
      {children && <span> {children}</span>}
    </p>
  )
}

/** What else stays in sight stands below it: how many lines it takes hangs on language, theme and width. */
function tellHeight(note: HTMLElement): () => void {
  const watch = new ResizeObserver(() => note.parentElement?.style.setProperty('--caution-height', `${note.offsetHeight}px`))
  watch.observe(note)
  return () => watch.disconnect()
}
