import { log } from '../../words/log'
import type { CallProgress } from '../../wire.gen'

// Right runs from nothing to always, sure from half: the line on which they agree
// rises through the upper half alone.
const width = 300
const height = 300
const left = 52
const right = 16
const top = 14
const bottom = 46
const low = 0.5 // who is less sure than that says "cannot tell"
const at = (share: number) => left + ((Math.max(low, share) - low) / (1 - low)) * (width - left - right)
const up = (share: number) => height - bottom - share * (height - top - bottom)

/** How sure against how right: on the line one is as right as one is sure, and a stalk shows how far off it one is. */
export function Calibration({ calls }: { calls: CallProgress }) {
  const bins = calls.calibration.filter(({ n }) => n > 0)
  if (bins.length === 0) return null
  const most = Math.max(...bins.map(({ n }) => n))
  const percent = (share: number) => Math.round(share * 100)
  const said = bins.map(({ said: sure, right: came, n }) => log.sureRight({ sure: percent(sure), right: percent(came), n })).join(' ')
  return (
    <figure class="calibration stack">
      <p class="small soft" aria-hidden="true">{log.rightAxis}</p>
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={said}>
        <path class="calibration-under" d={`M${at(0.5)} ${up(0.5)}L${at(1)} ${up(1)}V${up(0)}H${at(0.5)}Z`} />
        <path class="spark-axis" d={`M${left} ${top}V${height - bottom}H${width - right}`} />
        <path class="dots-truth" d={`M${at(0.5)} ${up(0.5)}L${at(1)} ${up(1)}`} />
        {bins.map(({ low: from, said: sure, right: came, n }) => (
          <g key={from}>
            <path class="calibration-stalk" d={`M${at(sure)} ${up(sure)}V${up(came)}`} />
            <circle class="dot" cx={at(sure)} cy={up(came)} r={4 + 7 * Math.sqrt(n / most)} />
          </g>
        ))}
        <text class="calibration-side" x={left + 8} y={top + 14}>{log.righter}</text>
        <text class="calibration-side" x={width - right - 6} y={height - bottom - 10} text-anchor="end">{log.surer}</text>
        {[0.5, 0.75, 1].map((share) => (
          <text key={share} x={at(share)} y={height - bottom + 16} text-anchor={share === 1 ? 'end' : 'middle'}>{`${percent(share)} %`}</text>
        ))}
        {[0, 0.5, 1].map((share) => (
          <text key={share} x={left - 6} y={up(share) + 4} text-anchor="end">{`${percent(share)} %`}</text>
        ))}
        <text x={(left + width - right) / 2} y={height - 8} text-anchor="middle">{log.sureAxis}</text>
      </svg>
      <figcaption class="small soft">{log.calibrationWhy}</figcaption>
    </figure>
  )
}
