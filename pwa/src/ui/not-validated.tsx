import { signal } from '@preact/signals'
import { useEffect } from 'preact/hooks'
import { words } from '../words/frame'
import { engine } from '../worker/client'
import type { Version } from '../worker/protocol'
import './not-validated.css'

/** What the engine says of itself, once it has loaded. */
export const version = signal<Version | undefined>(undefined)

let asking: Promise<void> | undefined

function ask(): Promise<void> {
  return (asking ??= engine.version().then(
    (said) => void (version.value = said),
    () => void (asking = undefined),
  ))
}

/** The label that Drill, Prop and every reading carry until the fire model has passed its table. */
export function NotValidated() {
  useEffect(() => void ask(), [])
  const said = version.value
  if (said?.validated !== false) return null
  return (
    <details class="not-validated">
      <summary>{words.app.notValidated}</summary>
      <p class="small">{words.app.notValidatedWhy(said.lines_held, said.lines)}</p>
    </details>
  )
}
