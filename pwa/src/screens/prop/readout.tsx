import { prop } from '../../words/en/prop'
import { trade } from '../../words/en/trade'
import { openingName, spoken, type CompartmentLook } from '../../render'
import { REGIME_WORDS, STAGE_WORDS, type Scenario } from '../../wire.gen'
import type { BenchFire, Now } from './fire'
import { roomsOf } from './fuel-panel'
import { happened } from './happened'
import { through } from './through'

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
          {through(fire.building.scenario, opening, look)}
        </p>
      )}
      {now.lit && !cutaway && <p class="soft">{prop.strokes}</p>}
      {cutaway && <Behind now={now} scenario={fire.building.scenario} />}
    </div>
  )
}

/** Less than this prints as 0.0 kW: nothing burns whose size fuel or air could set. */
const BURNS_KW = 0.05

function Behind({ now, scenario }: { now: Now; scenario: Scenario }) {
  const { stage, regime, hrrKW } = now.frame.header
  const lines = happened(now.events, scenario)
  const burns = hrrKW >= BURNS_KW
  return (
    <section aria-label={prop.behind}>
      <dl class="prop-figures">
        <div><dt>{prop.stage}</dt><dd>{now.lit ? trade.stages[STAGE_WORDS[stage] ?? 'undetermined'] : prop.nothingBurns}</dd></div>
        <div><dt>{prop.regime}</dt><dd>{burns ? trade.regimes[REGIME_WORDS[regime] ?? 'fuel_limited'] : prop.nothingBurns}</dd></div>
        <div><dt>{prop.heat}</dt><dd>{prop.heatKW(hrrKW)}</dd></div>
      </dl>
      <Rooms now={now} scenario={scenario} />
      <p class="small soft">{prop.legend} {prop.strokes}</p>
      <h2 class="label">{prop.events}</h2>
      {lines.length === 0 ? <p class="small soft">{prop.noEvents}</p> : (
        <ol class="prop-events">
          {lines.map(({ tS, what, where, cause }) => (
            <li key={`${tS} ${what} ${where}`}>
              <span class="prop-when">{prop.clock(tS)}</span> {what}, {where}
              <span class="small soft"> {cause}</span>
            </li>
          ))}
        </ol>
      )}
    </section>
  )
}

/** The figures of every room, where a phone's section has no space to write them. */
function Rooms({ now, scenario }: { now: Now; scenario: Scenario }) {
  const open = new Set(roomsOf(scenario.compartments))
  return (
    <table class="prop-rooms">
      <thead><tr><th scope="col">{prop.room}</th><th scope="col">{prop.upper}</th><th scope="col">{prop.lower}</th><th scope="col">{prop.oxygen}</th></tr></thead>
      <tbody>
        {scenario.compartments.map(({ id }, k) => open.has(id) && <Room key={id} id={id} look={now.frame.compartments[k]!} />)}
      </tbody>
    </table>
  )
}

function Room({ id, look }: { id: string; look: CompartmentLook }) {
  return (
    <tr>
      <th scope="row">{spoken(id)}</th>
      <td>{prop.celsius(look.upperC)}</td>
      <td>{prop.celsius(look.lowerC)}</td>
      <td>{prop.percent(100 * look.o2Upper)}</td>
    </tr>
  )
}
