import { log } from '../../words/log'

interface SparkProps {
  /** Errors of the ratings in the order given, 0 to 1. */
  errors: readonly number[]
  name: string
}

const width = 320
const height = 64
const left = 50
const right = 48
const top = 8
const foot = height - 16
const usual = 0.5 // the scale ends here unless an error was larger; chosen by us

/** The mean of so many ratings makes one point. Chosen by us: fewer jump about, more hide what changes. */
export const window = 10

/** Means of each stretch of ratings: the first stretch, and one for each rating after it. */
export function smooth(errors: readonly number[], over = window): number[] {
  const means: number[] = []
  for (let end = over; end <= errors.length; end++) {
    means.push(errors.slice(end - over, end).reduce((sum, one) => sum + one, 0) / over)
  }
  return means
}

/** How the error of one skill has gone: the line falls as the eye improves. */
export function Spark({ errors, name }: SparkProps) {
  const means = smooth(errors)
  if (means.length < 2) return null
  const x = (n: number) => left + (n / (means.length - 1)) * (width - left - right)
  const highest = Math.max(...means) > usual ? 1 : usual
  const y = (mean: number) => top + (1 - mean / highest) * (foot - top)
  const path = means.map((mean, n) => `${n ? 'L' : 'M'}${x(n).toFixed(1)} ${y(mean).toFixed(1)}`).join('')
  const [first, last] = [means[0]!, means.at(-1)!]
  const percent = (share: number) => Math.round(share * 100)
  return (
    <svg class="spark" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={log.errorOf({ name, from: percent(first), to: percent(last) })}>
      <path class="spark-axis" d={`M${left} ${top}V${foot}H${width - right}`} />
      <text x={left - 6} y={top + 4} text-anchor="end">{`${percent(highest)} %`}</text>
      <text x={left - 6} y={foot + 3} text-anchor="end">0 %</text>
      <path class="spark-line" d={path} />
      <circle class="dot" cx={x(means.length - 1)} cy={y(last)} r="4" />
      <text class="spark-now" x={x(means.length - 1) + 8} y={y(last) + 4}>{`${percent(last)} %`}</text>
    </svg>
  )
}
