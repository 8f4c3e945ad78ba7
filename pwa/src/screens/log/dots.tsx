interface DotsProps {
  /** Signed differences from the truth. */
  off: readonly number[]
  /** The largest difference that the plot shows. */
  reach: number
  label: string
  left: string
  right: string
}

const width = 320
const pitch = 9 // between dots that lie on each other
const widest = 4
const tallest = 90 // of a pile; more dots than fit are drawn closer

/** Every rating as a dot about the line of truth, piled where several agree. */
export function Dots({ off, reach, label, left, right }: DotsProps) {
  const at = (value: number) => width / 2 + (Math.max(-reach, Math.min(reach, value)) / reach) * (width / 2 - 12)
  const placed = pile(off.map(at))
  const deepest = Math.max(1, ...placed.map(({ level }) => level + 1))
  const rise = Math.min(pitch, tallest / deepest)
  const radius = Math.max(1.5, Math.min(widest, 0.45 * rise))
  const height = 28 + rise * deepest
  const foot = height - 20
  return (
    <svg class="dots" viewBox={`0 0 ${width} ${height}`} role="img" aria-label={label}>
      <path class="dots-axis" d={`M0 ${foot}H${width}`} />
      <path class="dots-truth" d={`M${width / 2} 0V${foot + 5}`} />
      {placed.map(({ x, level }, n) => (
        <circle key={n} class="dot" cx={x} cy={foot - radius - 2 - level * rise} r={radius} />
      ))}
      <text x="0" y={height - 4}>
        {left}
      </text>
      <text x={width} y={height - 4} text-anchor="end">
        {right}
      </text>
    </svg>
  )
}

/** Dots nearer than their own width lie on top of each other. */
function pile(places: readonly number[]): { x: number; level: number }[] {
  const columns = new Map<number, number>()
  return places.map((place) => {
    const x = width / 2 + Math.round((place - width / 2) / pitch) * pitch
    const level = columns.get(x) ?? 0
    columns.set(x, level + 1)
    return { x, level }
  })
}
