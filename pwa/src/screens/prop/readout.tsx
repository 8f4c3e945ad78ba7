import { prop } from '../../words/en/prop'
import { trade } from '../../words/en/trade'
import { openingName, spoken } from '../../render'
import { REGIME_WORDS, STAGE_WORDS } from '../../wire.gen'
import type { BenchFire, Now } from './fire'

interface ReadoutProps { fire: BenchFire; now: Now; cutaway: boolean; selected: string | undefined }

/** Small live figures. With the wall in place only what one could see; behind it, the fire itself. */
export function Readout({ fire, now, cutaway, selected }: ReadoutProps) {
  const { openings } = fire.building.scenario
  const index = openings.findIndex(({ id }) => id === selected)
  const opening = openings[index]
  const look = now.frame.openings[index]
  return (
    <div class="prop-readout">
      {!now.lit && <p>{prop.notLit}</p>}
      {opening && look && (
        <p>
          <strong>{openingName(opening)}</strong>: {prop.openness(Math.round(100 * look.open))},{' '}
          {(look.opticalDepth > 0.05 ? prop.flows : prop.clearFlows)[look.flow] ?? prop.nothingMoves}
        </p>
      )}
      {cutaway && <Behind now={now} />}
    </div>
  )
}

function Behind({ now }: { now: Now }) {
  const { stage, regime, hrrKW } = now.frame.header
  return (
    <section aria-label={prop.behind}>
      <dl class="prop-figures">
        <div><dt>{prop.stage}</dt><dd>{trade.stages[STAGE_WORDS[stage] ?? 'undetermined']}</dd></div>
        <div><dt>{prop.regime}</dt><dd>{trade.regimes[REGIME_WORDS[regime] ?? 'fuel_limited']}</dd></div>
        <div><dt>{prop.heat}</dt><dd>{prop.heatKW(hrrKW)}</dd></div>
      </dl>
      <p class="small soft">{prop.legend}</p>
      <h2 class="label">{prop.events}</h2>
      {now.events.length === 0 ? <p class="small soft">{prop.noEvents}</p> : (
        <ol class="prop-events">
          {now.events.map((event) => (
            <li key={`${event.t_s} ${event.kind} ${event.where}`}>
              <span class="prop-when">{prop.clock(event.t_s)}</span> {prop.eventKinds[event.kind] ?? spoken(event.kind)},{' '}
              {spoken(event.where).toLowerCase()}
              <span class="small soft"> {event.cause}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  )
}
