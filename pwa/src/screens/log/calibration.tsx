import { log } from '../../words/log'
import type { CallProgress } from '../../wire.gen'

const size = 268
const edge = 44
const low = 0.5 // who is less sure than that says "cannot tell"
const at = (share: number) => edge + ((Math.max(low, share) - low) / (1 - low)) * (size - edge - 20)
const up = (share: number) => size - edge - share * (size - edge - 20)

/** How sure against how right: on the line one is as right as one is sure. */
export function Calibration({ calls }: { calls: CallProgress }) {
  const bins = calls.calibration.filter(({ n }) => n > 0)
  if (bins.length === 0) return null
  const most = Math.max(...bins.map(({ n }) => n))
  const percent = (share: number) => Math.round(share * 100)
  const said = bins.map(({ said: sure, right, n }) => log.sureRight({ sure: percent(sure), right: percent(right), n })).join(' ')
  return (
    <figure class="calibration stack">
      <svg viewBox={`0 0 ${size} ${size}`} role="img" aria-label={said}>
        <path class="spark-axis" d={`M${edge} 20V${size - edge}H${size - 20}`} />
        <path class="dots-truth" d={`M${at(0.5)} ${up(0.5)}L${at(1)} ${up(1)}`} />
        {bins.map(({ low: from, said: sure, right, n }) => (
          <circle key={from} class="dot" cx={at(sure)} cy={up(right)} r={4 + 8 * Math.sqrt(n / most)} />
        ))}
        {[0.5, 0.75, 1].map((share) => (
          <text key={share} x={at(share)} y={size - edge + 16} text-anchor="middle">{`${percent(share)} %`}</text>
        ))}
        {[0, 0.5, 1].map((share) => (
          <text key={share} x={edge - 6} y={up(share) + 4} text-anchor="end">{`${percent(share)} %`}</text>
        ))}
        <text x={(edge + size) / 2} y={size - 4} text-anchor="middle">{log.sureAxis}</text>
      </svg>
      <figcaption class="small soft">{log.calibrationWhy}</figcaption>
    </figure>
  )
}
