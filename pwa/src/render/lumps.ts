// Lumps: gradient noise (Perlin 1985, with the quintic of Perlin 2002; from
// memory, to be confirmed). The value noise of noise.ts has its zero lines along
// the lattice, and where a picture draws the creases between heads by them the
// lattice shows as woven cloth. These are laid down once on a fine tile and read
// askew to the picture, so that no line of it lies level or upright.

/**
 * A place in noise, and the value that was read there. It is an array since numbers
 * that go from function to function by themselves become garbage: hundreds of
 * kilobytes of it for each step of smoke, and a collection every few pictures.
 */
export type Spot = Float64Array
export const X = 0
export const Y = 1
export const VALUE = 2
export const makeSpot = (): Spot => new Float64Array(3)

const CELLS = 64 // lattice cells of the tile, which repeats
const FINE = 4 // samples a cell: with straight lines between them no corner shows (chosen by us)
const SIDE = CELLS * FINE

// By an angle of half the golden ratio's slope, 31.7 degrees: no short row of
// cells comes back to level (chosen by us).
const TURN_X = 0.8506508083520399
const TURN_Y = 0.5257311121191336

/** Mean distance from zero of the value noise, which these lumps take the place of: 17/48. */
export const MEAN = 0.354

/** A tile of lumps, from a stream of random numbers between 0 and 1. It must be laid before it is read. */
export class Lumps {
  readonly #tile = new Float32Array(SIDE * SIDE)
  readonly #vectors: Float32Array
  #rows = 0

  constructor(next: () => number) {
    this.#vectors = gradients(next)
  }

  /** Lays more of the tile, for about so many ms of script. Returns whether all of it is laid. */
  lay(ms: number): boolean {
    const began = performance.now()
    while (this.#rows < CELLS && performance.now() - began < ms) {
      for (let x = 0; x < CELLS; x++) fillCell(this.#tile, this.#vectors, x, this.#rows)
      if (++this.#rows === CELLS) level(this.#tile)
    }
    return this.#rows === CELLS
  }

  /** The value at a spot, about -1 to 1; one unit is one grain. */
  read(spot: Spot): void {
    const x = spot[X]!
    const y = spot[Y]!
    const u = FINE * (TURN_X * x - TURN_Y * y)
    const v = FINE * (TURN_Y * x + TURN_X * y)
    const x0 = floor(u)
    const y0 = floor(v)
    const left = x0 & (SIDE - 1)
    const right = (x0 + 1) & (SIDE - 1)
    const top = (y0 & (SIDE - 1)) * SIDE
    const bottom = ((y0 + 1) & (SIDE - 1)) * SIDE
    const tile = this.#tile
    const a = tile[top + left]! + (u - x0) * (tile[top + right]! - tile[top + left]!)
    const b = tile[bottom + left]! + (u - x0) * (tile[bottom + right]! - tile[bottom + left]!)
    spot[VALUE] = a + (v - y0) * (b - a)
  }
}

/** A unit vector for every lattice point: x and y in turn. */
function gradients(next: () => number): Float32Array {
  const all = new Float32Array(2 * CELLS * CELLS)
  for (let k = 0; k < all.length; k += 2) {
    let x = 0
    let y = 0
    while (x * x + y * y > 1 || x * x + y * y < 0.01) {
      x = 2 * next() - 1
      y = 2 * next() - 1
    }
    const length = Math.sqrt(x * x + y * y)
    all[k] = x / length
    all[k + 1] = y / length
  }
  return all
}

const steps = Float64Array.from({ length: FINE }, (_, i) => i / FINE)
const eased = steps.map((t) => t * t * t * (t * (t * 6 - 15) + 10)) // Perlin's quintic

/** Brings the mean distance from zero to that of the value noise. */
function level(tile: Float32Array): void {
  let sum = 0
  for (let k = 0; k < tile.length; k++) sum += Math.abs(tile[k]!)
  const mean = sum / tile.length
  for (let k = 0; k < tile.length; k++) tile[k] = (tile[k]! * MEAN) / mean
}

/** One cell of the tile: a few samples between its four corners. */
function fillCell(tile: Float32Array, vectors: Float32Array, x: number, y: number): void {
  const upper = y * CELLS
  const lower = ((y + 1) % CELLS) * CELLS
  const right = (x + 1) % CELLS
  const ax = vectors[2 * (upper + x)]!
  const ay = vectors[2 * (upper + x) + 1]!
  const bx = vectors[2 * (upper + right)]!
  const by = vectors[2 * (upper + right) + 1]!
  const cx = vectors[2 * (lower + x)]!
  const cy = vectors[2 * (lower + x) + 1]!
  const dx = vectors[2 * (lower + right)]!
  const dy = vectors[2 * (lower + right) + 1]!
  for (let j = 0; j < FINE; j++) {
    const v = steps[j]!
    const fy = eased[j]!
    const o = (FINE * y + j) * SIDE + FINE * x
    for (let i = 0; i < FINE; i++) {
      const u = steps[i]!
      const fx = eased[i]!
      const above = (ax * u + ay * v) * (1 - fx) + (bx * (u - 1) + by * v) * fx
      const below = (cx * u + cy * (v - 1)) * (1 - fx) + (dx * (u - 1) + dy * (v - 1)) * fx
      tile[o + i] = above * (1 - fy) + below * fy
    }
  }
}

/** Faster than Math.floor where it is called for every cell. */
export const floor = (x: number): number => (x < 0 ? (x | 0) - 1 : x | 0)
