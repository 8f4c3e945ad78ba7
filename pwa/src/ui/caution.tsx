import type { ComponentChildren } from 'preact'
import { words } from '../words/frame'
import './caution.css'

/** The standing caution of Size-up, its reading and Prop. It cannot be put away. */
export function Caution({ children }: { children?: ComponentChildren }) {
  return (
    <p class="caution" role="note">
      <strong>{words.caution.trainingOnly}</strong> {words.caution.notAtIncident}
      {children && <span> {children}</span>}
    </p>
  )
}
