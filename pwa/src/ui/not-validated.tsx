import { words } from '../words/frame'
import { FIRE_MODEL } from '../wire.gen'
import './not-validated.css'

/** The label that Drill, Prop and every reading carry until the fire model has passed its table. */
export function NotValidated() {
  if (FIRE_MODEL.validated) return null
  return (
    <details class="not-validated">
      <summary>{words.app.notValidated}</summary>
      <p class="small">{words.app.notValidatedWhy(FIRE_MODEL.held, FIRE_MODEL.lines)}</p>
    </details>
  )
}
