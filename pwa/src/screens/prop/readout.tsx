import { prop } from '../../words/prop'
import { trade } from '../../words/trade'
import { temperature } from '../../words/units'
import { layered, openingName, spoken, type CompartmentLook } from '../../render'
import { REGIME_WORDS, STAGE_WORDS, type Scenario } from '../../wire.gen'
import type { Bench } from './bench'
import { roomsOf } from './fuel-panel'
import { happened } from './happened'
import { through } from './through'
import type { View } from './view'

interface ReadoutProps { bench: Bench; view: View; cutaway: boolean; selected: string | undefined }

/** Small live figures. With the wall in place only what one could see; behind it, the fire itself. */
export function Readout({ bench, view, cutaway, selected }: ReadoutProps) {
  const { openings } = bench.building.scenario
  const index = openings.findIndex(({ id }) => id === selected)
  const opening = openings[index]
  const look = view.frame.openings[index]
  return (
    <>
      <div class="prop-readout">
        {!view.lit && <p>{prop.notLit}</p>}
        {opening && look && (
          <p>
            <strong>{openingName(opening)}</strong>: {prop.openness(Math.round(100 * look.open))},{' '}
            {through(bench.building.scenario, opening, look)}
          </p>
        )}
        {view.lit && !cutaway && <p class="soft">{prop.strokes}</p>}
        {cutaway && <Figures view={view} />}
      </div>
      {cutaway && <Behind view={view} scenario={bench.building.scenario} />}
    </>
  )
}

/** Less than this prints as 0.0 kW: nothing burns whose size fuel or air could set. */
const BURNS_KW = 0.05

function Figures({ view }: { view: View }) {
  const { stage, regime, hrrKW } = view.frame.header
  const burns = hrrKW >= BURNS_KW
  return (
    <dl class="prop-figures">
      <div><dt>{prop.stage}</dt><dd>{view.lit ? trade.stages[STAGE_WORDS[stage] ?? 'undetermined'] : prop.nothingBurns}</dd></div>
      <div><dt>{prop.regime}</dt><dd>{burns ? trade.regimes[REGIME_WORDS[regime] ?? 'fuel_limited'] : prop.nothingBurns}</dd></div>
      <div><dt>{prop.heat}</dt><dd>{prop.heatKW(hrrKW)}</dd></div>
    </dl>
  )
}

/** The rooms in numbers and what happened: on a phone beneath what one works with. */
function Behind({ view, scenario }: { view: View; scenario: Scenario }) {
  const lines = happened(view.events)
  return (
    <section class="prop-behind" aria-label={prop.behind}>
      <Rooms view={view} scenario={scenario} />
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
function Rooms({ view, scenario }: { view: View; scenario: Scenario }) {
  const open = new Set(roomsOf(scenario.compartments))
  return (
    <table class="prop-rooms">
      <thead><tr><th scope="col">{prop.room}</th><th scope="col">{prop.upper}</th><th scope="col">{prop.lower}</th><th scope="col">{prop.oxygen}</th></tr></thead>
      <tbody>
        {scenario.compartments.map(({ id }, k) => open.has(id) && <Room key={id} id={id} look={view.frame.compartments[k]!} />)}
      </tbody>
    </table>
  )
}

function Room({ id, look }: { id: string; look: CompartmentLook }) {
  return (
    <tr>
      <th scope="row">{spoken(id)}</th>
      <td>{layered(look) ? temperature(look.upperC) : prop.noLayer}</td>
      <td>{temperature(look.lowerC)}</td>
      <td>{layered(look) ? prop.percent(100 * look.o2Upper) : prop.noLayer}</td>
    </tr>
  )
}
