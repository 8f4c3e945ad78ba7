import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { TextField } from '../../ui/text-field'
import { board } from '../../words/class-board'
import type { ClassBoardScene } from '../../wire.gen'
import type { Lead } from './lead'

/** Lets the instructor disagree with the key of one question, and take that back. */
export function Key({ scene, ask, lead }: { scene: ClassBoardScene; ask: string; lead: Lead }) {
  const [open, setOpen] = useState(false)
  const [note, setNote] = useState('')
  const doubt = scene.doubts.find((one) => one.ask === ask)
  const set = (on: boolean) => lead.do({ kind: 'disagreed', scene: scene.id, ask, on, note: on ? note.trim() : '' }).then(() => setOpen(false))
  if (doubt)
    return (
      <div class="row spread board-doubt">
        <p class="small">{board.disagreed(doubt.by, doubt.note)}</p>
        <Button look="quiet" onClick={() => void set(false)}>
          {board.disagreeBack}
        </Button>
      </div>
    )
  if (!open)
    return (
      <Button look="quiet" onClick={() => setOpen(true)}>
        {board.disagree}
      </Button>
    )
  return (
    <form
      class="stack board-doubt"
      onSubmit={(event) => {
        event.preventDefault()
        void set(true)
      }}
    >
      <p class="small soft">{board.disagreeWhy}</p>
      <TextField label={board.disagreeNote} value={note} set={setNote} most={400} />
      <div class="row">
        <Button submit disabled={note.trim() === ''}>
          {board.disagreeNow}
        </Button>
        <Button look="quiet" onClick={() => setOpen(false)}>
          {board.disagreeNot}
        </Button>
      </div>
    </form>
  )
}
