import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { board } from '../../words/class-board'
import type { ClassBoardPerson, ClassBoardView } from '../../wire.gen'
import type { DeskProps } from './desk-props'
import { Detail } from './detail'
import { Sheet } from './sheet'

/** Who is here and who has committed; a press on a name opens what is for the instructor alone. */
export function People({ view, here, lead }: DeskProps) {
  const [open, setOpen] = useState<number>()
  const [typing, type] = useState(false)
  const chosen = view.people.find(({ person }) => person === open)
  const there = view.people.filter(({ removed }) => !removed)
  const gone = view.people.filter(({ removed }) => removed)
  return (
    <section class="stack" aria-label={board.people}>
      <h2>{board.people}</h2>
      {view.people.length === 0 && <p class="soft">{board.nobody}</p>}
      <ul class="people">
        {[...there, ...gone].map((one) => (
          <li key={one.person}>
            <button type="button" class="person" onClick={() => setOpen(one.person)}>
              <strong>{one.call_sign}</strong>
              <span class="small">{standing(one, here, view)}</span>
            </button>
          </li>
        ))}
      </ul>
      <div>
        <Button onClick={() => type(true)}>{board.sheet}</Button>
      </div>
      {typing && (
        <Dialog title={board.sheet} close={() => type(false)}>
          <Sheet view={view} lead={lead} />
        </Dialog>
      )}
      {chosen && (
        <Dialog title={board.detail(chosen.call_sign)} close={() => setOpen(undefined)}>
          <Detail key={chosen.person} person={chosen} view={view} lead={lead} />
        </Dialog>
      )}
    </section>
  )
}

/**
 * In a word, never by a hue: the reading is in; if not, why it may not come; else that it has not come yet.
 * While everyone works at their own pace, how far each has come.
 */
export function standing(one: ClassBoardPerson, here: readonly number[], view: ClassBoardView): string {
  if (one.removed) return board.removed
  const far = board.ofScenes(one.committed.length, view.scenes.length)
  if (view.step === 'ended') return far
  const scene = view.step === 'watch' ? undefined : view.scene?.id
  const place = !one.device ? board.paper : here.includes(one.person) ? board.isHere : board.isAway
  if (view.step === 'commit' && scene === undefined) return here.includes(one.person) ? far : `${place}, ${far}`
  if (scene === undefined) return place
  if (one.committed.includes(scene)) return board.hasCommitted
  return here.includes(one.person) ? board.hasNot : place
}
