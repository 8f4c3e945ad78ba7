import { useState } from 'preact/hooks'
import { decimal } from '../../words/number'
import { prop } from '../../words/prop'
import type { Bench } from './bench'
import { series, times, type Curve, type Line, type Shown } from './series'
import type { Now } from './view'

interface TableProps { bench: Bench; now: Now; curve: Curve; shown: Shown; name: string }

/** Rows of a table at most, and the shortest time between two, s. Chosen by us: to be read aloud. */
const ROWS = 24
const APART_S = 5

/** A curve in numbers, for whoever cannot see it. */
export function CurveTable({ bench, now, curve, shown, name }: TableProps) {
  const [open, setOpen] = useState(false)
  return (
    <details class="prop-table" onToggle={(event) => setOpen(event.currentTarget.open)}>
      <summary>{prop.asTable}</summary>
      {open && <Table bench={bench} now={now} curve={curve} shown={shown} name={name} />}
    </details>
  )
}

function Table({ bench, now, curve, shown, name }: TableProps) {
  const newestS = Math.max(now.first.headS, now.second?.headS ?? 0)
  const { tS, lines } = series(curve, bench.burns, shown, now.branchS, times(newestS, ROWS, APART_S))
  return (
    <table class="prop-rooms">
      <caption>{name}</caption>
      <thead>
        <tr>
          <th scope="col">{prop.tableTime}</th>
          {lines.map((line) => <th key={`${line.fire} ${line.layer}`} scope="col">{headOf(line, now.second !== undefined)}</th>)}
        </tr>
      </thead>
      <tbody>
        {tS.map((t, k) => (
          <tr key={t}>
            <th scope="row">{prop.clock(t)}</th>
            {lines.map(({ fire, layer, values }) => <td key={`${fire} ${layer}`}>{said(curve, values[k] ?? null)}</td>)}
          </tr>
        ))}
      </tbody>
    </table>
  )
}

function headOf({ fire, layer }: Line, two: boolean): string {
  const what = layer === undefined ? undefined : layer === 'upper' ? prop.upper : prop.lower
  if (!two) return what ?? prop.fires[fire]
  return what === undefined ? prop.fires[fire] : prop.tableOf(what, prop.fires[fire])
}

function said(curve: Curve, value: number | null): string {
  if (value === null || Number.isNaN(value)) return prop.noValue
  return decimal(value, curve === 'oxygen' || (curve === 'heat' && value < 10) ? 1 : 0)
}
