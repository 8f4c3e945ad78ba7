import { FIRE, GRAIN_X, GRAIN_Y, TAU } from './fluid/grid'
import type { Noise } from './noise'
import { flameColour, opacity } from './tone'

// How burning gas looks: its brightness, and the flame before the smoke.

const LEVELS_OFF = 0.45 // glow at half of the full brightness; chosen by us, by eye

/**
 * Burning gas in tongues: drawn out along its way, and thinner between them; none where they pass too quickly to be
 * told, as what the afterglow leaves of those is a slow flicker that hides how fast the gas goes. Its brightness levels
 * off, so that its edge is no step.
 */
export function tongues(f: Float32Array, o: number, noise: Noise, told: number): number {
  const fire = f[o + FIRE]!
  const tau = f[o + TAU]!
  const bright = fire / (fire + LEVELS_OFF)
  if (fire < 0.02 || tau < 0.02) return bright
  const n = noise.rough((1.4 * f[o + GRAIN_X]!) / tau, (0.55 * f[o + GRAIN_Y]!) / tau)
  return bright * (0.8 + 0.95 * told * told * n)
}

/** The glow with its neighbours mixed in, so that no flame ends on the edge of a cell. */
export function soft(glow: Float32Array, p: number, row: number): number {
  const up = p - row
  const down = p + row
  return 0.25 * glow[p]! + 0.125 * (glow[up]! + glow[down]! + glow[p - 1]! + glow[p + 1]!) +
    0.0625 * (glow[up - 1]! + glow[up + 1]! + glow[down - 1]! + glow[down + 1]!)
}

/** Puts flame in front of the smoke already painted. */
export function ignite(fire: number, tau: number, smokeA: number, pixels: Uint8ClampedArray, p: number): void {
  const burn = clamp01((fire - 0.02) * 1.25)
  const flameA = burn * (1.5 - 0.5 * burn) * (1 - opacity(0.045 * tau)) // it soon hides what is behind: a flame has an edge
  const all = smokeA + flameA - smokeA * flameA
  if (all <= 0) return
  const share = (smokeA * (1 - flameA)) / all
  for (let k = 0; k < 3; k++) pixels[p + k] = share * pixels[p + k]! + (1 - share) * flameColour(burn, k)
  pixels[p + 3] = 255 * all
}

const clamp01 = (x: number) => (x < 0 ? 0 : x > 1 ? 1 : x)
