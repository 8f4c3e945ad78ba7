import { Swatch } from '../ui/swatch'
import { words } from '../words/frame'
import { classes } from '../words/class'
import { trade } from '../words/trade'
import type { ClassAskSpread } from '../wire.gen'
import { MomentSpread } from './moment-spread'
import { percent, stacked, Told, type Own, type SpreadProps } from './spread-parts'
import { stopsOf, swatchCue, unsure, valueOf, type Stop } from './stops'
import './spread.css'

/** What a class answered to one question, as dots on the rail that it answered on. */
export function Spread(props: SpreadProps) {
  if (props.said.ask.kind === 'plane') return <PlaneSpread {...props} />
  if (props.said.ask.kind === 'moment') return <MomentSpread {...props} />
  return swatchCue(props.said.ask) ? <RailSpread {...props} /> : <LineSpread {...props} />
}

/** An ordinal cue: dots stand on the stops, swatches below. */
function RailSpread(props: SpreadProps) {
  const cue = swatchCue(props.said.ask)!
  return (
    <ol class="spread-rail" aria-label={props.name}>
      {stopsOf(props.said).map((stop) => (
        <li key={stop.key} class={isTrue(props.said, stop) ? 'spread-stop spread-true' : 'spread-stop'}>
          <Pile {...props} stop={stop} />
          {stop.key === unsure ? <span class="spread-blank" /> : <Swatch cue={cue} level={Number(stop.key)} />}
          <span class="spread-name">{stop.name}</span>
          <Note {...props} stop={stop} />
        </li>
      ))}
    </ol>
  )
}

/** Choices in words: one line each, dots along it. */
function LineSpread(props: SpreadProps) {
  return (
    <ol class="spread-lines" aria-label={props.name}>
      {stopsOf(props.said).map((stop) => (
        <li key={stop.key} class={isTrue(props.said, stop) ? 'spread-line spread-true' : 'spread-line'}>
          <span class="spread-name">{stop.name}</span>
          <Pile {...props} stop={stop} />
          <Note {...props} stop={stop} />
        </li>
      ))}
    </ol>
  )
}

/** As many dots as people; one's own is ringed, and named in the note below. */
function Pile({ said, own, stop }: SpreadProps & { stop: Stop }) {
  const mine = ownAt(own, stop).length
  return (
    <span class="pile" aria-hidden="true">
      {Array.from({ length: countOf(said, stop) }, (_, at) => (
        <span key={at} class={at < mine ? 'pile-dot pile-own' : 'pile-dot'} />
      ))}
    </span>
  )
}

/** In words: how many, whether one is among them, whether it was so. */
function Note({ said, own, stop }: SpreadProps & { stop: Stop }) {
  const n = countOf(said, stop)
  return (
    <span class="spread-note">
      {n > 0 && <span class="spread-count">{n}</span>}
      {ownAt(own, stop).map(({ name }) => (
        <strong key={name} class="spread-own">
          {name}
        </strong>
      ))}
      {isTrue(said, stop) && <strong>{words.app.truth}</strong>}
    </span>
  )
}

/** The neutral plane: dots at the height where each was set, in the opening they were set in. */
function PlaneSpread({ said, name, own = [] }: SpreadProps) {
  const truth = said.truth?.[0]?.plane
  const planes = said.planes.map(trade.planeAt).join('; ') || classes.nobody
  return (
    <div class="spread-plane">
      <div class="spread-opening" role="img" aria-label={classes.planesSaid(name, planes)}>
        {truth !== undefined && <div class="spread-plane-true" style={{ bottom: percent(truth) }} />}
        {stacked(said.planes, heights).map(({ share, at }, n) => (
          <span key={n} class="pile-dot" style={{ bottom: percent(share), left: `${0.6 + at * 0.85}em` }} />
        ))}
        {ownMarks(own).map(({ names, share }) => (
          <span key={names} class="spread-plane-own" style={{ bottom: percent(share) }}>
            {names}
          </span>
        ))}
      </div>
      <dl class="spread-told">
        {truth !== undefined && <Told name={words.app.truth} said={trade.planeAt(truth)} />}
        {own.map(({ name: whose, reply }) => (
          <Told key={whose} name={whose} said={reply.plane === undefined ? trade.cannotTell : trade.planeAt(reply.plane)} />
        ))}
        {said.unsure > 0 && <Told name={trade.cannotTell} said={String(said.unsure)} />}
      </dl>
    </div>
  )
}

const heights = 20 // as fine as a plane can be set

const nameHigh = 0.1 // how high a name is, as a share of the opening's height in spread.css

/** One's own marks. Two whose names would lie on each other share one, half way between. */
export function ownMarks(own: readonly Own[]): { names: string; share: number }[] {
  const marks = own.flatMap(({ name, reply }) => (reply.plane === undefined ? [] : [{ names: name, share: reply.plane }]))
  const [one, other] = marks // two people at most are on a phone
  if (!one || !other || Math.abs(one.share - other.share) >= nameHigh) return marks
  return [{ names: `${one.names}, ${other.names}`, share: (one.share + other.share) / 2 }]
}

function countOf(said: ClassAskSpread, stop: Stop): number {
  if (stop.key === unsure) return said.unsure
  return said.counts.find(({ value }) => value === stop.key)?.n ?? 0
}

function ownAt(own: readonly Own[] = [], stop: Stop): Own[] {
  return own.filter(({ reply }) => valueOf(reply) === stop.key)
}

function isTrue(said: ClassAskSpread, stop: Stop): boolean {
  return said.truth?.some((reply) => valueOf(reply) === stop.key) ?? false
}
