// From optical depth and lightness to what is seen. What hides the wall is
// Beer-Lambert, 1 - exp(-tau) (Jin's and every later smoke work). How light it
// looks is the smoke's own lightness, CIE L* over 100 as the engine's optics
// give it, within what the light of the scene leaves between black and white.

/** The light that smoke stands in. */
export interface Light {
  /** How light the blackest and the whitest smoke look, L* over 100. */
  dark: number
  pale: number
  /** Share of each of red, green and blue that the light has. */
  cast: readonly [number, number, number]
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

// Smoke hangs in soft veils from the first of these optical depths down, and none does
// from the second up. Chosen by us, by eye.
const THIN = 0.2
const THICK = 1

/** How much of a veil smoke of this optical depth is, 0 to 1. */
export const veil = (tau: number): number => Math.max(0, Math.min(1, (THICK - tau) / (THICK - THIN)))

const DEPTH_OF = new Float32Array(DEPTHS + 1)
for (let k = 0, depth = 0; k <= DEPTHS; k++) {
  while (depth < DEPTHS && OPACITY[depth]! * DEPTHS < k) depth++
  DEPTH_OF[k] = (depth * DEEPEST) / DEPTHS
}

/** Optical depth at which smoke hides as much as smoke of depth tau does that covers only this share of the view. */
export function depthInPart(tau: number, share: number): number {
  return share >= 1 ? tau : share <= 0 ? 0 : DEPTH_OF[Math.round(share * opacity(tau) * DEPTHS)]!
}

// The grey of each twentieth of L*, 0 to 255: CIE 15 for L* to luminance, IEC
// 61966-2-1 for luminance to the byte; a table, so that it is the same everywhere.
const GREYS = [
  0, 16.8, 27.5, 37.7, 48.3, 59.3, 70.6, 82.3, 94.2, 106.4, 118.9, 131.6, 144.6, 157.7, 171, 184.6, 198.3, 212.2, 226.3, 240.6, 255,
]

/** The grey that looks this light, 0 to 255. */
export function grey(lightness: number): number {
  const at = 20 * clamp01(lightness)
  const k = Math.min(19, at | 0)
  return GREYS[k]! + (at - k) * (GREYS[k + 1]! - GREYS[k]!)
}

// A brown smoke keeps its red and loses its blue, as tar absorbs most at short
// wavelengths (Pokhrel et al. 2016, single scattering albedo 0.91 at 405 nm
// against 0.99 at 660 nm). Its green, by which the engine's lightness goes, nearly
// stays; the shares are chosen by us.
const BROWN = [0.12, -0.035, -0.36] as const

/** Red, green and blue of smoke in a light, 0 to 255, into an array. */
export function mixSmoke(light: Light, lightness: number, tint: number, into: Float32Array): void {
  const lit = grey(light.dark + (light.pale - light.dark) * lightness)
  for (let k = 0; k < 3; k++) into[k] = lit * light.cast[k]! * (1 + BROWN[k]! * tint)
}

const mixed = new Float32Array(3)

/** The colour of smoke in a light, as a canvas takes it. */
export function smokeColour(light: Light, lightness: number, tint: number, alpha: number): string {
  mixSmoke(light, lightness, tint, mixed)
  const channel = (k: number) => Math.min(255, Math.round(mixed[k]!))
  return `rgba(${channel(0)},${channel(1)},${channel(2)},${alpha.toFixed(3)})`
}

// A flame from its root outward: deep orange, orange, yellow. Soot that glows at
// flame temperature gives next to no blue (Planck's law): its brightest is yellow
// and not white, which would pass for pale smoke. The three are chosen by us.
const FLAME = [[168, 52, 14], [240, 128, 34], [255, 200, 84]] as const

/** One channel of a flame's colour, from its root at 0 to its brightest at 1. */
export function flameColour(burn: number, k: number): number {
  const at = burn * 2
  const low = at >= 1 ? 1 : 0
  const a = FLAME[low]![k]!
  const b = FLAME[low + 1]![k]!
  return a + (b - a) * Math.min(1, at - low)
}

const clamp01 = (x: number) => (x < 0 ? 0 : x > 1 ? 1 : x)
