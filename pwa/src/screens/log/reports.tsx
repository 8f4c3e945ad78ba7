import { locale } from '../../words/language'
import { log } from '../../words/log'
import { drill } from '../../words/drill'
import type { CallProgress, KindSum, Progress, ReportProgress } from '../../wire.gen'
import { Calibration } from './calibration'

/** Answers with their confidence, and what was called out in time. */
export function Calls({ progress: { calls, reports } }: { progress: Progress }) {
  return (
    <>
      {calls.n > 0 && (
        <section class="stack">
          <h2>{log.confidence}</h2>
          <Calibration calls={calls} />
          <p>{spellCalls(calls).join(' ')}</p>
          {calls.kinds.length > 1 && <ByKind kinds={calls.kinds} />}
        </section>
      )}
      {reports.n > 0 && <Reports reports={reports} />}
    </>
  )
}

function spellCalls({ gap, brier, overlap }: CallProgress): string[] {
  const said: string[] = []
  if (gap !== null && gap !== undefined) said.push(log.gap(Math.round(gap * 100)))
  if (brier !== null && brier !== undefined) said.push(log.brier(brier.toLocaleString(locale, { maximumFractionDigits: 2 })))
  if (overlap !== null && overlap !== undefined) said.push(log.overlap(Math.round(overlap * 100)))
  return said
}

const percent = (share: number) => `${Math.round(share * 100)} %`

/** The same for each kind of scene: where one is surer than right. */
function ByKind({ kinds }: { kinds: readonly KindSum[] }) {
  return (
    <table class="four">
      <thead>
        <tr>
          <th scope="col">{log.sureKind}</th>
          <th scope="col">{log.sureSaid}</th>
          <th scope="col">{log.sureCame}</th>
          <th scope="col">{log.sureOf}</th>
        </tr>
      </thead>
      <tbody>
        {kinds.map(({ kind, n, said, right }) => (
          <tr key={kind}>
            <th scope="row">{drill.kinds[kind]}</th>
            <td>{percent(said)}</td>
            <td>{percent(right)}</td>
            <td>{n}</td>
          </tr>
        ))}
      </tbody>
    </table>
  )
}

/** A square of four counts: shown or not, reported or not. */
function Reports({ reports }: { reports: ReportProgress }) {
  const { hits, misses, false_alarms, correct_rejections, d_prime, criterion, lead_s } = reports
  const said: string[] = []
  if (lead_s !== null && lead_s !== undefined) said.push(log.lead(Math.round(lead_s)))
  if (d_prime !== null && d_prime !== undefined) said.push(log.dPrime(d_prime.toLocaleString(locale, { maximumFractionDigits: 1 })))
  if (criterion !== null && criterion !== undefined) said.push(criterion > 0.2 ? log.late : criterion < -0.2 ? log.early : log.even)
  return (
    <section class="stack">
      <h2>{log.reports}</h2>
      <table class="four">
        <thead>
          <tr>
            <td />
            <th scope="col">{log.reported}</th>
            <th scope="col">{log.notReported}</th>
          </tr>
        </thead>
        <tbody>
          <tr>
            <th scope="row">{log.showed}</th>
            <td>{hits}</td>
            <td>{misses}</td>
          </tr>
          <tr>
            <th scope="row">{log.showedNothing}</th>
            <td>{false_alarms}</td>
            <td>{correct_rejections}</td>
          </tr>
        </tbody>
      </table>
      <p>{said.join(' ')}</p>
    </section>
  )
}
