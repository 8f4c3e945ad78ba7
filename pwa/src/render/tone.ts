// From optical depth and lightness to pixels. What hides the wall is
// Beer-Lambert, 1 - exp(-tau) (Jin's and every later smoke work); what colour
// it has is the smoke's own lightness under the light of the scene. A relief
// from the slope of the optical depth gives dense smoke its body; it has no
// mean, so that it never makes smoke look lighter or darker on the whole.

/** The light that smoke stands in. */
export interface Light {
  /** Colour of the blackest and of the whitest smoke, 0 to 255. */
  dark: readonly [number, number, number]
  pale: readonly [number, number, number]
  /** How strongly the relief shows, 0 to 1. */
  relief: number
}

const DEPTHS = 1024
const DEEPEST = 8 // optical depth past which nothing shows through: 1 part in 3000
const PASSES = 0.9922179382602435 // exp(-8/1024): made into a table by multiplying, which is the same on every machine
const OPACITY = new Float32Array(DEPTHS + 1)
for (let k = 0, through = 1; k <= DEPTHS; k++, through *= PASSES) OPACITY[k] = 1 - through

/** Share of the background that smoke of this optical depth hides. */
export function opacity(tau: number): number {
  return tau <= 0 ? 0 : OPACITY[tau >= DEEPEST ? DEPTHS : (tau * (DEPTHS / DEEPEST)) | 0]!
}

// A brown smoke keeps its red and loses its blue, as tar absorbs most at short
// wavelengths (Pokhrel et al. 2016, single scattering albedo 0.91 at 405 nm
// against 0.99 at 660 nm; the share taken off is chosen by us).
export const BROWN = [0.04, 0.2, 0.46] as const

// A flame from its root outward: deep orange, orange, pale yellow. Chosen by us.
const FLAME = [[168, 52, 14], [240, 128, 34], [255, 214, 130]] as const

/** One channel of a flame's colour, from its root at 0 to its brightest at 1. */
export function flameColour(burn: number, k: number): number {
  const at = burn * 2
  const low = at >= 1 ? 1 : 0
  const a = FLAME[low]![k]!
  const b = FLAME[low + 1]![k]!
  return a + (b - a) * Math.min(1, at - low)
}

/** The colour of smoke in a light, as a canvas takes it. */
export function smokeColour({ dark, pale }: Light, lightness: number, tint: number, alpha: number): string {
  const channel = (k: number) => Math.round((dark[k]! + (pale[k]! - dark[k]!) * lightness) * (1 - BROWN[k]! * tint))
  return `rgba(${channel(0)},${channel(1)},${channel(2)},${alpha.toFixed(3)})`
}
