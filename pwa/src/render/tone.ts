import { FIELDS, FIRE, GRAIN_X, GRAIN_Y, LIGHT, TAU, TINT, type Grid, type Smoke } from './fluid/grid'
import { STEP_S } from './fluid/step'
import type { Noise } from './noise'

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
const BROWN = [0.04, 0.2, 0.46] as const

// A flame from its root outward: deep orange, orange, pale yellow. Chosen by us.
const FLAME = [[168, 52, 14], [240, 128, 34], [255, 214, 130]] as const

const LEVELS_OFF = 0.45 // glow at half of the full brightness; chosen by us, by eye

// The glow follows the burning gas with this delay, which no flicker faster
// than about 2 Hz survives. Chosen by us; tested by the flash counter.
const AFTERGLOW_S = 0.22

/** What one layer remembers between paints: its glow, and the depth with its grain in it. */
export interface Canvas { pixels: Uint8ClampedArray; glow: Float32Array; depth: Float32Array }

export function makeCanvas({ nx, ny }: Grid): Canvas {
  const cells = 4 * nx * ny
  return {
    pixels: new Uint8ClampedArray(4 * cells),
    glow: new Float32Array(cells),
    depth: new Float32Array((2 * nx + 2) * (2 * ny + 2)),
  }
}

/** Paints one layer of smoke into RGBA pixels, 2nx by 2ny. */
export function paint(grid: Grid, smoke: Smoke, canvas: Canvas, noise: Noise, light: Light): void {
  const { ny, nx, fineRow } = grid
  const { now, first, last } = smoke
  const { pixels, glow, depth } = canvas
  pixels.fill(0)
  depth.fill(0)
  const follow = Math.min(1, STEP_S / AFTERGLOW_S)
  for (let j = 1; j <= 2 * ny; j++) grainRow(grid, smoke, noise, depth, j)
  extend(depth, fineRow, 2 * nx, 2 * ny)
  for (let j = 1; j <= 2 * ny; j++) {
    for (let i = first[j]!; i <= last[j]!; i++) {
      const pixel = (j - 1) * 2 * nx + i - 1
      glow[pixel]! += follow * (tongues(now, (j * fineRow + i) * FIELDS, noise) - glow[pixel]!)
    }
  }
  for (let j = 1; j <= 2 * ny; j++) {
    for (let i = first[j]!; i <= last[j]!; i++) {
      const cell = j * fineRow + i
      const pixel = (j - 1) * 2 * nx + i - 1
      const fire = soft(glow, pixel, 2 * nx)
      if (depth[cell]! > 0.004 || fire > 0.01) shade(now, cell, depth, fineRow, fire, light, pixels, pixel * 4)
    }
  }
}

/** The glow with its neighbours mixed in, so that no flame ends on the edge of a cell. Outside the picture there is none. */
function soft(glow: Float32Array, p: number, row: number): number {
  const up = p - row
  const down = p + row
  return 0.25 * glow[p]! + 0.125 * ((glow[up] ?? 0) + (glow[down] ?? 0) + (glow[p - 1] ?? 0) + (glow[p + 1] ?? 0)) +
    0.0625 * ((glow[up - 1] ?? 0) + (glow[up + 1] ?? 0) + (glow[down - 1] ?? 0) + (glow[down + 1] ?? 0))
}

/** Lets the smoke run on past the edge of the picture, so that the edge casts no relief. */
function extend(depth: Float32Array, row: number, columns: number, rows: number): void {
  depth.copyWithin(0, row, 2 * row)
  depth.copyWithin((rows + 1) * row, rows * row, (rows + 1) * row)
  for (let c = 0; c < depth.length; c += row) {
    depth[c] = depth[c + 1]!
    depth[c + columns + 1] = depth[c + columns]!
  }
}

// How uneven smoke is: a little where it flows smoothly, in long streaks, and
// strongly where it churns, in lumps. Chosen by us, by eye.
const STREAKS = 0.16
const LUMPS = 0.6

/** Optical depth with the grain that the smoke took along from its opening. */
function grainRow(grid: Grid, smoke: Smoke, noise: Noise, depth: Float32Array, j: number): void {
  const { fineRow, row, rough } = grid
  const { now, first, last } = smoke
  let beforeX = 0
  let beforeY = 0
  for (let i = first[j]!; i <= last[j]!; i++) {
    const cell = j * fineRow + i
    const o = cell * FIELDS
    const tau = now[o + TAU]!
    if (tau < 0.02) {
      depth[cell] = tau
      continue
    }
    const churning = Math.max(folds(tau), Math.min(1, rough[((j + 1) >> 1) * row + ((i + 1) >> 1)]!))
    const along = now[o + GRAIN_Y]! / tau
    const x = now[o + GRAIN_X]! / tau
    // Where streams of different age are wound together the grain is finer than a cell: let it go.
    const wound = Math.abs(x - beforeX) + Math.abs(along - beforeY)
    beforeX = x
    beforeY = along
    const clear = wound < 0.35 ? 1 : wound > 0.8 ? 0 : (0.8 - wound) / 0.45
    depth[cell] = tau * (1 + clear * ((1 - churning) * STREAKS * noise.at(x, 0.25 * along) + churning * LUMPS * billow(noise, x, along)))
  }
}

// Smoke that hides even a lamp (optical depth 8, the top cut of density in
// content/scales) shows soft folds on its face, however calmly it flows.
const FOLDS_FROM = 5
const FOLDS_FULL = 11
const FOLDS = 0.6
const folds = (tau: number) => FOLDS * clamp01((tau - FOLDS_FROM) / (FOLDS_FULL - FOLDS_FROM))

/** Round heads with creases between them, as of a cauliflower; no mean. */
function billow(noise: Noise, x: number, y: number): number {
  const large = Math.abs(noise.at(x, y))
  const small = Math.abs(noise.at(2.3 * x + 11.7, 2.3 * y + 4.9))
  return 2.3 * large + 0.6 * small - 0.87
}

/** One pixel: smoke over flame, most of the smoke being behind it. */
function shade(
  f: Float32Array, cell: number, depth: Float32Array, down: number, fire: number, light: Light,
  pixels: Uint8ClampedArray, p: number,
): void {
  const o = cell * FIELDS
  const tau = depth[cell]!
  const share = f[o + TAU]! > 1e-4 ? 1 / f[o + TAU]! : 0
  const bright = clamp01(f[o + LIGHT]! * share)
  const tint = clamp01(f[o + TINT]! * share)
  const raise = light.relief * relief(depth, cell, down)
  const { dark, pale } = light
  const lit = 1 + raise
  const lift = 26 * raise
  pixels[p] = (dark[0] + (pale[0] - dark[0]) * bright) * (1 - BROWN[0] * tint) * lit + lift
  pixels[p + 1] = (dark[1] + (pale[1] - dark[1]) * bright) * (1 - BROWN[1] * tint) * lit + lift
  pixels[p + 2] = (dark[2] + (pale[2] - dark[2]) * bright) * (1 - BROWN[2] * tint) * lit + lift
  const smokeA = opacity(tau)
  pixels[p + 3] = 255 * smokeA
  if (fire > 0.02) ignite(fire, tau, smokeA, pixels, p)
}

/** Puts flame in front of the smoke already painted. */
function ignite(fire: number, tau: number, smokeA: number, pixels: Uint8ClampedArray, p: number): void {
  const burn = clamp01((fire - 0.02) * 1.25)
  const flameA = burn * (1 - opacity(0.045 * tau))
  const all = smokeA + flameA - smokeA * flameA
  if (all <= 0) return
  const share = (smokeA * (1 - flameA)) / all
  for (let k = 0; k < 3; k++) pixels[p + k] = share * pixels[p + k]! + (1 - share) * flameColour(burn, k)
  pixels[p + 3] = 255 * all
}

/** Burning gas in tongues: drawn out along its way, and thinner between them. Its brightness levels off, so that its edge is no step. */
function tongues(f: Float32Array, o: number, noise: Noise): number {
  const fire = f[o + FIRE]!
  const tau = f[o + TAU]!
  const bright = fire / (fire + LEVELS_OFF)
  if (fire < 0.02 || tau < 0.02) return bright
  const n = noise.rough((1.4 * f[o + GRAIN_X]!) / tau, (0.55 * f[o + GRAIN_Y]!) / tau)
  return bright * (0.8 + 0.95 * n)
}

/** Light from the upper left on the lumps of thick smoke: -1 to 1, 0 on thin smoke. */
function relief(depth: Float32Array, cell: number, down: number): number {
  const tau = depth[cell]!
  if (tau < 0.3) return 0
  const across = lump(depth[cell + 1]!) - lump(depth[cell - 1]!)
  const downward = lump(depth[cell + down]!) - lump(depth[cell - down]!)
  const slope = 1.5 * across + 2.1 * downward
  const body = tau > 2 ? 1 : (tau - 0.3) / 1.7
  return (body * slope) / (1 + Math.abs(slope))
}

/** Height of the relief: grows with depth but ever more slowly. */
const lump = (tau: number) => tau / (1 + 0.3 * tau)

function flameColour(burn: number, k: number): number {
  const at = burn * 2
  const low = at >= 1 ? 1 : 0
  const a = FLAME[low]![k]!
  const b = FLAME[low + 1]![k]!
  return a + (b - a) * Math.min(1, at - low)
}

const clamp01 = (x: number) => (x < 0 ? 0 : x > 1 ? 1 : x)
