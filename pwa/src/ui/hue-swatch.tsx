import type { Colour } from '../wire.gen'

// Flat patches beside the hue's name; chosen by us to be told apart, not measured.
const patches: Record<Colour, string> = {
  white: '#f4f3f0',
  light_grey: '#cfcdc9',
  grey: '#97948f',
  brown: '#7a5b3c',
  yellow_grey: '#a89b6a',
  dark_grey: '#4c4a48',
  black: '#141312',
}

/** A patch of one hue of smoke. */
export function HueSwatch({ colour }: { colour: Colour }) {
  return (
    <svg width="100%" height="28" aria-hidden="true">
      <rect width="100%" height="28" fill={patches[colour]} stroke="var(--line)" />
    </svg>
  )
}
