import { useEffect, useRef, useState } from 'preact/hooks'
import { theme } from '../../app/theme'
import { spoken, spokenWithin } from '../../render'
import { prop } from '../../words/prop'
import { degreesUnit } from '../../words/units'
import type { Bench } from './bench'
import { CurveTable } from './curve-table'
import { roomsOf } from './fuel-panel'
import { listed } from './moves'
import type { Drawn, Mark, Plot } from './plot'
import { CURVES, series, times, type Curve, type Shown } from './series'
import type { Now } from './view'
import './curves.css'

interface PanelProps { bench: Bench; now: Now; selected: string | undefined }

/** The past of both fires as curves over time, each with its table. */
export function CurvesPanel({ bench, now, selected }: PanelProps) {
  const { scenario, seat, small } = bench.building
  const [room, setRoom] = useState(seat)
  const movable = Math.max(0, scenario.openings.findIndex(({ id }) => id === selected))
  const opening = scenario.openings[movable]!
  const shown = { room: scenario.compartments.findIndex(({ id }) => id === room), opening: movable, compartments: scenario.compartments.length }
  const where = { heat: undefined, temperature: spokenWithin(room), oxygen: spokenWithin(room), plane: spokenWithin(opening.id) }
  if (now.first.headS < 1) return <p class="soft">{prop.curvesEmpty}</p>
  return (
    <div class="stack">
      {now.second && <p class="prop-key"><span class="prop-key-first">{prop.fires.first}</span> <span class="prop-key-second">{prop.fires.second}</span></p>}
      <p class="small soft">{prop.key.seek} {prop.key.moves} {small && prop.scaleCurves}</p>
      {CURVES.map((curve, k) => <OneCurve key={curve} bench={bench} now={now} curve={curve} shown={shown} where={where[curve]} turn={k} />)}
      <label class="prop-choose">
        <span>{prop.curveRoom}</span>
        <select aria-label={prop.curveRoom} value={room} onChange={(event) => setRoom(event.currentTarget.value)}>
          {roomsOf(scenario.compartments).map((id) => <option key={id} value={id}>{spoken(id)}</option>)}
        </select>
      </label>
      <p class="small soft">{prop.curvePlane}</p>
      <MarkList bench={bench} now={now} />
    </div>
  )
}

interface CurveProps { bench: Bench; now: Now; curve: Curve; shown: Shown; where: string | undefined; turn: number }

function OneCurve({ bench, now, curve, shown, where, turn }: CurveProps) {
  const unit = curve === 'temperature' ? degreesUnit() : prop.curveUnits[curve]
  const name = where === undefined ? prop.curveOf(prop.curves[curve], unit) : prop.curveIn(prop.curves[curve], unit, where)
  const draw = (): Drawn => {
    const newestS = Math.max(now.first.headS, now.second?.headS ?? 0)
    return { unit: curve === 'temperature' ? unit : prop.axisUnits[curve], series: series(curve, bench.burns, shown, now.branchS, times(newestS)), marks: marksOf(bench, now), shownS: now.tS }
  }
  const { place, failed } = usePlot(bench, draw, `${now.second !== undefined}`, turn)
  return (
    <section class="prop-curve">
      <h2 class="label">{name}</h2>
      {failed ? <p role="alert">{prop.curvesFailed}</p> : <div ref={place} class="prop-plot" aria-hidden="true" />}
      <CurveTable bench={bench} now={now} curve={curve} shown={shown} name={name} />
    </section>
  )
}

/** A plot that follows the fire: the curves take turns, so that no frame has to draw them all. */
function usePlot(bench: Bench, draw: () => Drawn, made: string, turn: number) {
  const place = useRef<HTMLDivElement>(null)
  const plot = useRef<Plot | undefined>(undefined)
  const latest = useRef(draw)
  latest.current = draw
  const [failed, setFailed] = useState(false)
  const colours = theme.value
  useEffect(() => {
    const at = place.current
    let wanted = true
    if (!at) return
    import('./plot').then(
      ({ Plot }) => {
        if (wanted) plot.current = new Plot(at, latest.current(), bench.seek.bind(bench))
      },
      () => wanted && setFailed(true),
    )
    const watch = new ResizeObserver(() => plot.current?.resize(at.clientWidth))
    watch.observe(at)
    return () => {
      wanted = false
      watch.disconnect()
      plot.current?.close()
      plot.current = undefined
    }
  }, [bench, made, colours])
  useEffect(() => {
    const timer = setTimeout(() => plot.current?.show(latest.current()), 40 * turn)
    return () => clearTimeout(timer)
  })
  return { place, failed }
}

/** The moves as numbers on the time axis, those of a second fire only from where it left. */
function marksOf({ building }: Bench, now: Now): Mark[] {
  const first = listed(now.first.moves, building.scenario).map(({ tS }, k) => ({ tS, text: String(k + 1), second: false }))
  const second = now.second ? listed(now.second.moves, building.scenario).map(({ tS }, k) => ({ tS, text: String(k + 1), second: true })) : []
  return [...first, ...second.filter(({ tS }) => tS >= (now.branchS ?? 0) - 1e-6)]
}

/** What the numbers on the time axis stand for. */
function MarkList({ bench, now }: { bench: Bench; now: Now }) {
  const fires = [[prop.fires.first, now.first], [prop.fires.second, now.second]] as const
  return (
    <section>
      <h2 class="label">{prop.movesSoFar}</h2>
      {fires.map(([name, view]) => view && (
        <div key={name}>
          {now.second && <h3 class="small">{name}</h3>}
          <ol class="prop-numbered">
            {listed(view.moves, bench.building.scenario).map((one) => (
              <li key={one.indexes[0]}><span class="prop-when">{prop.clock(one.tS)}</span> {one.name}</li>
            ))}
          </ol>
        </div>
      ))}
    </section>
  )
}
