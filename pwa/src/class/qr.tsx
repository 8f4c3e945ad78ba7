import { encode } from 'uqr'

// Dark on light in every theme, as many readers need it, inside the blank margin
// of four modules that they look for (ISO/IEC 18004, from memory, to be confirmed).
const quiet = 4

/** An address as a code that a phone reads. */
export function QR({ text, label }: { text: string; label: string }) {
  const { data, size } = encode(text, { ecc: 'M', border: quiet })
  const runs = data.map((row, y) => row.map((dark, x) => (dark ? `M${x} ${y}h1v1h-1z` : '')).join('')).join('')
  return (
    <svg class="qr" viewBox={`0 0 ${size} ${size}`} role="img" aria-label={label} shape-rendering="crispEdges">
      <rect width={size} height={size} fill="#ffffff" />
      <path d={runs} fill="#000000" />
    </svg>
  )
}
