import { words } from '../words/frame'
import { takeUpdate, updateOffered } from '../sw/update'
import { Button } from './button'
import './update-note.css'

/** Offers a new version, but never while an item is open. */
export function UpdateNote() {
  if (!updateOffered.value) return null
  return (
    <div class="update-note" role="status">
      <span>{words.app.updateReady}</span>
      <Button onClick={takeUpdate}>{words.app.updateNow}</Button>
    </div>
  )
}
