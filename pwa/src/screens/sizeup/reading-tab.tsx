import { useSignal } from '@preact/signals'
import { Button } from '../../ui/button'
import { NotValidated } from '../../ui/not-validated'
import { rise } from '../../ui/scroll'
import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import { capital, lowerFirst } from '../../words/sentence'
import { isCall, spellFirst, spellRest } from '../../words/stages'
import type { Finding } from '../../wire.gen'
import { Hazards } from './hazards'
import { seen } from './looks'
import { PlanDrawing } from './plan-drawing'
import { Reasons } from './reasons'
import { spellPath } from './path-words'
import { Share } from './share'
import { spoken } from '../../words/names'
import { Stages } from './stages'
import { all, finding, look, lookAgain, lookAt, problem, rated, save, saved, sketch } from './state'
import './reading.css'

/** The reading: what the signs are consistent with, why, and where to look next. */
export function ReadingTab() {
  const read = finding.value
  if (problem.value) return <p role="alert">{problem.value.message}</p>
  if (rated.value === 0) return <p>{sizeUp.nothingYet}</p>
  if (!read) return <p role="status">{sizeUp.readingIt}</p>
  return (
    <div class="reading stack stack-wide">
      <div class="stack stack-wide">
        <NotValidated />
        <Head read={read} />
        <NextLook read={read} />
        <Hazards hazards={read.hazards} />
      </div>
      <div class="stack stack-wide">
        <FlowPath read={read} />
        <Nearest read={read} />
        <Reasons read={read} />
        <ul class="reading-cautions small soft">
          {read.cautions.map((caution) => (
            <li key={caution}>{caution}</li>
          ))}
        </ul>
        <Actions />
      </div>
    </div>
  )
}

function Head({ read }: { read: Finding }) {
  return (
    <section class="stack">
      {isCall(read) && <p class="label">{sizeUp.consistent}</p>}
      <h2 class={isCall(read) ? 'reading-head' : 'reading-head reading-untold'} aria-live="polite">
        {spellFirst(read)}
      </h2>
      <Rest read={read} />
      <Trend read={read} />
      <Stages read={read} />
    </section>
  )
}

/** What the first line leaves standing. */
function Rest({ read }: { read: Finding }) {
  const said = spellRest(read)
  return said ? <p class="reading-rest">{capital(said)}</p> : null
}

function Trend({ read }: { read: Finding }) {
  const said = sizeUp.trend[read.trend as keyof typeof sizeUp.trend]
  return said ? <p>{said}</p> : null
}

function NextLook({ read }: { read: Finding }) {
  const next = read.next_look
  const one = all.value.find(({ id }) => id === next?.opening)
  if (!next || !one) return <Unlooked />
  return (
    <section class="stack">
      <h3 class="label">{sizeUp.nextLook}</h3>
      <Button wide onClick={() => (lookAt(one, next.cue), rise('.opening'))}>
        {sizeUp.goLook(trade.cues[next.cue], lowerFirst(one.name))}
      </Button>
    </section>
  )
}

/** Where no single look tells most: the openings that nobody looked at. */
function Unlooked() {
  const [one, ...others] = all.value.filter(({ id }) => !seen(look.value?.ratings[id]))
  if (!one) return null
  return (
    <section class="stack">
      <h3 class="label">{sizeUp.unlooked}</h3>
      <Button wide onClick={() => (lookAt(one), rise('.opening'))}>
        {sizeUp.goLookAt(lowerFirst(one.name))}
      </Button>
      {others.length > 0 && <p class="small soft">{sizeUp.unlookedMore(others.length)}</p>}
    </section>
  )
}

function FlowPath({ read }: { read: Finding }) {
  const drawn = sketch.value
  if (!drawn) return null
  return (
    <section class="stack">
      <h3>{sizeUp.path}</h3>
      <p>{read.path.length ? `${capital(spellPath(read))}.` : sizeUp.noPath}</p>
      {read.path_note && <p class="small soft">{capital(read.path_note)}.</p>}
      <PlanDrawing sketch={drawn} finding={read} />
      <p class="small soft">{sizeUp.planKey}</p>
    </section>
  )
}

function Nearest({ read }: { read: Finding }) {
  const [first] = Object.entries(read.openings).toSorted(([, a], [, b]) => b.nearness - a.nearness)
  const told = first && first[1].nearness > evenly(read)
  return (
    <section class="stack">
      <h3>{sizeUp.nearest}</h3>
      <p>{told ? spoken(first[0]) : sizeUp.noNearest}</p>
    </section>
  )
}

/** What every opening would have if nothing pointed anywhere. */
function evenly({ openings }: Finding): number {
  const near = Object.values(openings).map(({ nearness }) => nearness)
  return near.reduce((sum, one) => sum + one, 0) / Math.max(1, near.length)
}

function Actions() {
  const failed = useSignal(false)
  const keep = () => save().then(() => (failed.value = false), () => (failed.value = true))
  return (
    <div class="stack">
      <Button look="main" wide onClick={() => void keep()} disabled={saved.value}>
        {saved.value ? sizeUp.saved : sizeUp.save}
      </Button>
      {failed.value && <p role="alert">{sizeUp.notSaved}</p>}
      <div class="reading-actions">
        <Button onClick={lookAgain}>{sizeUp.again}</Button>
        <Share />
      </div>
    </div>
  )
}
