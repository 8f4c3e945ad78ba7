import { FlowPicture } from '../../ui/flow'
import { PlaneOver } from '../../ui/plane'
import { Swatch } from '../../ui/swatch'
import { drill } from '../../words/drill'
import { levelName, scale, type OrdinalCue } from '../../words/scales'
import type { Ask, Item, Part, Reply } from '../../wire.gen'
import { MomentLine } from './moment-line'
import { askName, spellReply } from '../../words/spell-reply'

/** One question afterwards: what you said over what it was. Told by place and words, never by hue. */
export function PartView({ item, part }: { item: Item; part: Part }) {
  const ask = item.question.asks.find(({ id }) => id === part.ask)
  if (!ask) return null
  const [truth] = part.truth
  const name = askName(ask, item.question.asks)
  return (
    <li class="part stack">
      <div class="row spread">
        <h2 class="part-name">{name}</h2>
        <span class="part-said">{judged(ask, part)}</span>
      </div>
      <Compared item={item} ask={ask} part={part} name={name} />
      {truth?.plane !== undefined && <PlaneOver given={part.given.plane} truth={truth.plane} />}
    </li>
  )
}

function Compared({ item, ask, part, name }: { item: Item; ask: Ask; part: Part; name: string }) {
  if (ask.kind === 'level') return <LevelRail ask={ask} part={part} name={name} />
  if (ask.kind === 'moment') return <MomentLine item={item} part={part} />
  return <Told ask={ask} part={part} />
}

/** How the answer compares, in words. */
export function judged(ask: Ask, part: Part): string {
  if (part.signal) return part.lead_s === undefined ? drill.signals[part.signal] : drill.leadS(Math.round(part.lead_s))
  if (part.given.unsure) return drill.unsure
  if (part.right) return drill.right
  if (part.steps) return drill.near(part.steps)
  const [truth] = part.truth
  if (ask.kind === 'plane' && part.given.plane !== undefined && truth?.plane !== undefined) {
    return part.given.plane > truth.plane ? drill.tooHigh : drill.tooLow
  }
  return drill.off
}

/** The rail of a cue with both marks: yours above, the truth below, on the same stops. */
function LevelRail({ ask, part, name }: { ask: Ask; part: Part; name: string }) {
  const cue = ask.cue as OrdinalCue
  const truths = new Set(part.truth.map(({ level }) => level))
  return (
    <>
      <ol class="rail" aria-label={name}>
        {scale(cue).levels.map(({ level }) => {
          const yours = part.given.level === level
          const truth = truths.has(level)
          return (
            <li key={level} class={truth ? 'stop stop-truth' : 'stop'}>
              <span class="stop-mark">{yours && drill.yours}</span>
              <Swatch cue={cue} level={level} />
              <span class="stop-name">{levelName(cue, level)}</span>
              <span class="stop-mark">{truth && drill.truth}</span>
            </li>
          )
        })}
      </ol>
      <Looks cue={cue} given={part.right ? [] : [{ name: drill.yours, level: part.given.level }]} truth={part.truth} />
    </>
  )
}

interface LooksProps {
  cue: OrdinalCue
  /** What was said and was not so, and by whom. */
  given: readonly { name: string; level: number | undefined }[]
  truth: readonly Reply[]
}

/** What the levels given look like, beside what the true one does. */
export function Looks({ cue, given, truth }: LooksProps) {
  const looks = (level: number | undefined) => scale(cue).levels.find((one) => one.level === level)?.looks
  const said = [...given.map(({ name, level }) => [name, looks(level)] as const), [drill.truth, truth.flatMap(({ level }) => looks(level) ?? []).join(` ${drill.or} `)] as const]
  return (
    <dl class="looks small">
      {said.map(
        ([name, text]) =>
          text && (
            <div key={name}>
              <dt class="label">{name}</dt>
              <dd>{text}</dd>
            </div>
          ),
      )}
    </dl>
  )
}

function Told({ ask, part }: { ask: Ask; part: Part }) {
  const truth = part.truth.map((one) => spellReply(ask, one)).join(` ${drill.or} `)
  const flow = part.truth[0]?.flow
  return (
    <dl class="told">
      <div>
        <dt class="label">{drill.yours}</dt>
        <dd>{spellReply(ask, part.given)}</dd>
      </div>
      <div>
        <dt class="label">{drill.truth}</dt>
        <dd class="told-truth">
          <strong>{truth}</strong>
          {flow && <FlowPicture flow={flow} />}
        </dd>
      </div>
    </dl>
  )
}
