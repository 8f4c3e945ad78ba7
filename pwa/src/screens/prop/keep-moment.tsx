import { useState } from 'preact/hooks'
import { keepSketch } from '../../class/sketches'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { TextField } from '../../ui/text-field'
import { prop } from '../../words/prop'
import type { Scenario } from '../../wire.gen'
import type { Bench } from './bench'
import type { Made } from './burn'
import { secondsAt, stepAt } from './past'
import type { Now } from './view'

/** Keeps the moment shown, so that an instructor can put it into a set of scenes. */
export function KeepMoment({ bench, now, moves }: { bench: Bench; now: Now; moves: readonly Made[] }) {
  const [open, setOpen] = useState(false)
  const begin = () => {
    bench.setPaused(true)
    setOpen(true)
  }
  return (
    <div class="stack">
      <Button look="quiet" onClick={begin}>
        {prop.keepMoment}
      </Button>
      {open && (
        <Dialog title={prop.keepMoment} close={() => setOpen(false)}>
          <Keeping scenario={sketched(bench.building.scenario, moves, now.tS)} tS={now.tS} name={prop.buildings[bench.building.id] ?? ''} />
        </Dialog>
      )}
    </div>
  )
}

/** The building with what has been done to it up to a moment. */
export function sketched(scenario: Scenario, moves: readonly Made[], tS: number): Scenario {
  const until = stepAt(tS)
  return { ...scenario, moves: moves.filter(({ step }) => step <= until).map(({ step, move }) => ({ ...move, t_s: secondsAt(step) })) }
}

function Keeping({ scenario, tS, name }: { scenario: Scenario; tS: number; name: string }) {
  const [title, setTitle] = useState(prop.keepAs(name, prop.clock(tS)))
  const [outcome, setOutcome] = useState<'kept' | 'lost'>()
  if (outcome === 'kept')
    return (
      <>
        <p role="status">{prop.kept}</p>
        <a class="button button-plain" href="/instructor/sets">
          {prop.keptTo}
        </a>
      </>
    )
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault()
        setOutcome(keepSketch({ title: title.trim(), scenario, moment_s: tS }) ? 'kept' : 'lost')
      }}
    >
      <p>{prop.keepWhy}</p>
      <TextField label={prop.keepTitle} value={title} set={setTitle} most={80} />
      {outcome === 'lost' && <p role="alert">{prop.keepLost}</p>}
      <Button look="main" wide submit disabled={title.trim() === ''}>
        {prop.keepNow}
      </Button>
    </form>
  )
}
