import { keepsNothing } from '../local/status'
import { words } from '../words/frame'
import './keep-note.css'

/** Said on every screen of a browser that refuses to keep anything. */
export function KeepNote() {
  if (!keepsNothing.value) return null
  return (
    <p class="keep-note" role="alert">
      {words.sync.keepsNothing}
    </p>
  )
}
