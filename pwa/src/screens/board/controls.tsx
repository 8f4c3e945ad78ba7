import { useEffect, useState } from 'preact/hooks'
import { LookLine } from '../../class/look-line'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { classes } from '../../words/class'
import { board } from '../../words/class-board'
import type { ClassBoardView } from '../../wire.gen'
import type { DeskProps } from './desk-props'
import type { Lead } from './lead'
import { nextAct } from './next-act'

/** What leads the class on: one main press for the next step, the rest smaller. */
export function Controls({ view, now, lead, here, door }: DeskProps) {
  if (view.step === 'ended') return <p>{board.ended}</p>
  const { scene } = view
  return (
    <section class="controls stack" aria-label={board.title}>
      {scene && <LookLine from={scene.look_from_ms} until={scene.look_until_ms} now={now} />}
      <div class="row">
        <NextStep view={view} lead={lead} />
        <Undo key={view.undo_until_ms} until={view.undo_until_ms} now={now} lead={lead} />
        {view.step === 'watch' && scene && scene.look_until_ms > 0 && (
          <>
            <Button onClick={() => void lead.do({ kind: 'look_extended', add_s: 30 })}>{board.more30}</Button>
            <Button onClick={() => void lead.do({ kind: 'look_untimed' })}>{board.untime}</Button>
          </>
        )}
        <p class="controls-count" role="status">
          <Counts view={view} here={here} />
        </p>
        {view.step === 'gather' && door && !view.locked && (
          <p class="controls-count">
            {classes.code} <strong>{door.code}</strong>
          </p>
        )}
        {isLast(view) && <Ending lead={lead} look="main" />}
      </div>
    </section>
  )
}

function Counts({ view, here }: { view: ClassBoardView; here: readonly number[] }) {
  const there = view.people.filter(({ removed }) => !removed)
  if (there.length === 0) return <>{board.nobody}</>
  const committed = view.scene && there.filter((one) => one.committed.includes(view.scene!.id)).length
  const phones = there.filter(({ device }) => device)
  const through = there.filter((one) => one.committed.length === view.scenes.length).length
  return (
    <>
      {phones.length > 0 && <span>{board.here(phones.filter(({ person }) => here.includes(person)).length, phones.length)}</span>}
      {committed !== null && view.step !== 'watch' && <strong>{board.committed(committed, there.length)}</strong>}
      {atOwnPace(view) && <strong>{board.through(through, there.length)}</strong>}
    </>
  )
}

/** Everyone is at a scene of their own. */
const atOwnPace = ({ pace, step, scene }: ClassBoardView) => pace === 'self' && step === 'commit' && !scene

function NextStep({ view, lead }: { view: ClassBoardView; lead: Lead }) {
  const next = nextAct(view)
  if (!next) return null
  return (
    <Button look="main" disabled={lead.waiting.value} onClick={() => void lead.do(next.act)}>
      {next.name}
    </Button>
  )
}

/** Takes the last step back, for as long as the server allows it. */
function Undo({ until, now, lead }: { until: number; now(): number; lead: Lead }) {
  const [open, setOpen] = useState(until > now())
  useEffect(() => {
    const left = until - now()
    setOpen(left > 0)
    if (left <= 0) return undefined
    const timer = setTimeout(() => setOpen(false), left)
    return () => clearTimeout(timer)
  }, [until])
  if (!open) return null
  return <Button onClick={() => void lead.do({ kind: 'undone' })}>{board.undo}</Button>
}

/** Nothing comes after this but the end. */
export const isLast = (view: ClassBoardView) => view.step === 'cutaway' && !nextAct(view)

/** Ends the class, asked once more. */
export function Ending({ lead, look }: { lead: Lead; look: 'main' | 'quiet' }) {
  const [sure, ask] = useState(false)
  return (
    <>
      <Button look={look} onClick={() => ask(true)}>
        {board.end}
      </Button>
      {sure && (
        <Dialog title={board.end} close={() => ask(false)}>
          <p>{board.endSure}</p>
          <Button wide onClick={() => void lead.do({ kind: 'ended' }).then(() => ask(false))}>
            {board.endNow}
          </Button>
          <Button look="main" wide onClick={() => ask(false)}>
            {board.keepOn}
          </Button>
        </Dialog>
      )}
    </>
  )
}
