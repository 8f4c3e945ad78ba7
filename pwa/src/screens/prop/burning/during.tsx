import { useEffect, useState } from 'preact/hooks'
import { box } from '../../../buildings/box'
import { openingName } from '../../../render'
import { Button } from '../../../ui/button'
import { Dialog } from '../../../ui/dialog'
import { burning } from '../../../words/burning'
import { prop } from '../../../words/prop'
import { plan, STANDS } from './plan'
import { secondsAfter, standing, type BurnLog, type Note } from './record'
import { TimelineList } from './timeline-list'

interface DuringProps { log: BurnLog; write(note: Note): Promise<void> }

/** One thumb logs what is done and what is called, outside the ring. */
export function During({ log, write }: DuringProps) {
  const [failed, setFailed] = useState(false)
  const [writing, setWriting] = useState(0)
  const note = (one: Note) => {
    setWriting((n) => n + 1)
    write(one).then(() => setFailed(false), () => setFailed(true)).finally(() => setWriting((n) => n - 1))
  }
  return (
    <div class="burn burn-during">
      <div class="stack">
        <div class="burn-now">
          <Clock log={log} />
          <p role="status" class={failed ? 'burn-failed' : 'soft'}>{failed ? burning.notKept : writing > 0 ? burning.writing : burning.kept}</p>
        </div>
        <p class="small"><strong>{burning.notPermission}</strong> {burning.signedBy(log.signed, log.stopWord)}</p>
        <button type="button" class="burn-key burn-stop" onClick={() => note({ what: 'call', call: 'stop' })}>{burning.calls['stop']}</button>
        {log.litAt === undefined ? (
          <>
            <p>{burning.notLit}</p>
            <Button look="main" wide onClick={() => note({ what: 'lit' })}>{burning.lit}</Button>
          </>
        ) : <Plan log={log} note={note} />}
      </div>
      <div class="stack burn-keys">
        <h2 class="label">{burning.callOuts}</h2>
        <div class="burn-calls">
          {Object.entries(burning.calls).map(([call, name]) => call !== 'stop' && (
            <button key={call} type="button" class="burn-key" onClick={() => note({ what: 'call', call })}>{name}</button>
          ))}
        </div>
        <p class="small soft">{burning.lessNote}</p>
        <Moves log={log} note={note} />
      </div>
      <div class="stack">
        <h2 class="label">{burning.log}</h2>
        <TimelineList log={log} newestFirst strike={(entry) => note({ what: 'strike', entry })} />
        <End end={() => note({ what: 'end' })} />
      </div>
    </div>
  )
}

function Clock({ log }: { log: BurnLog }) {
  const [now, setNow] = useState(Date.now)
  useEffect(() => {
    const timer = setInterval(() => setNow(Date.now()), 500)
    return () => clearInterval(timer)
  }, [])
  return <div class="burn-clock" role="timer" aria-label={burning.sinceLit}>{prop.clock(secondsAfter(log, now))}</div>
}

/** The next move of the plan, with the question that goes before it. */
function Plan({ log, note }: { log: BurnLog; note(one: Note): void }) {
  const at = plan.findIndex((_, k) => !log.passed.has(k))
  const step = plan[at]
  if (!step) return <p class="soft">{burning.planDone}</p>
  return (
    <section class="burn-next" aria-label={burning.planTitle}>
      <p class="small soft">{burning.next(at + 1, plan.length)}</p>
      <p class="burn-ask"><span class="label">{burning.ask}</span> {burning.asks[step.ask]}</p>
      <p><strong>{burning.opening(nameOf(step.opening), burning.state[step.open]!)}</strong></p>
      <div class="burn-made">
        <Button look="main" onClick={() => note({ what: 'move', opening: step.opening, open: step.open, planned: at })}>{burning.made}</Button>
        <Button onClick={() => note({ what: 'skip', planned: at })}>{burning.skip}</Button>
      </div>
      <p class="small soft">{burning.planNote}</p>
    </section>
  )
}

const nameOf = (id: string) => openingName(box.openings.find((one) => one.id === id)!)

/** Any opening of the box, in three states. */
function Moves({ log, note }: { log: BurnLog; note(one: Note): void }) {
  const stands = standing(log, STANDS)
  return (
    <section>
      <h2 class="label">{burning.moves}</h2>
      {box.openings.map(({ id }) => (
        <div key={id} class="burn-opening" role="group" aria-label={nameOf(id)}>
          <span>{nameOf(id)}</span>
          {[1, 0.5, 0].map((open) => (
            <button key={open} type="button" class="burn-key" aria-pressed={(stands[id] ?? 0) === open} onClick={() => note({ what: 'move', opening: id, open })}>
              {burning.state[open]}
            </button>
          ))}
        </div>
      ))}
    </section>
  )
}

/** Ending takes two presses: a thumb on its way elsewhere ends nothing. */
function End({ end }: { end(): void }) {
  const [asked, ask] = useState(false)
  return (
    <div class="stack">
      <Button wide onClick={() => ask(true)}>{burning.end}</Button>
      {asked && (
        <Dialog title={burning.end} close={() => ask(false)}>
          <p>{burning.endNote}</p>
          <div class="row">
            <Button onClick={() => ask(false)}>{burning.goOn}</Button>
            <Button look="main" onClick={end}>{burning.endConfirm}</Button>
          </div>
        </Dialog>
      )}
    </div>
  )
}
