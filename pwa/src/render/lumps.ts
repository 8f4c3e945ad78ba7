// Lumps: gradient noise (Perlin 1985, with the quintic of Perlin 2002; from
// memory, to be confirmed). The value noise of noise.ts has its zero lines along
// the lattice, and where a picture draws the creases between heads by them the
// lattice shows as woven cloth. These are laid down once on a fine tile and read
// askew to the picture, so that no line of it lies level or upright.

const CELLS = 64 // lattice cells of the tile, which repeats
const FINE = 4 // samples a cell: with straight lines between them no corner shows (chosen by us)
const SIDE = CELLS * FINE

// By an angle of half the golden ratio's slope, 31.7 degrees: no short row of
// cells comes back to level (chosen by us).
const TURN_X = 0.8506508083520399
const TURN_Y = 0.5257311121191336

/** Mean distance from zero of the value noise, which these lumps take the place of: 17/48. */
export const MEAN = 0.354

/** A tile of lumps, from a stream of random numbers between 0 and 1. */
export class Lumps {
  readonly #tile: Float32Array
  constructor(next: () => number) {
    const tile = raw(gradients(next))
    const mean = tile.reduce((sum, n) => sum + Math.abs(n), 0) / tile.length
    this.#tile = tile.map((n) => (n * MEAN) / mean)
  }

  /** The value at a point, about -1 to 1; one unit is one grain. */
  at(x: number, y: number): number {
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
    return a + (v - y0) * (b - a)
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

const steps = Array.from({ length: FINE }, (_, i) => i / FINE)
const eased = steps.map((t) => t * t * t * (t * (t * 6 - 15) + 10)) // Perlin's quintic

/** The tile cell by cell: in each, the same few samples between its four corners. */
function raw(vectors: Float32Array): Float32Array {
  const tile = new Float32Array(SIDE * SIDE)
  for (let y = 0; y < CELLS; y++) for (let x = 0; x < CELLS; x++) fillCell(tile, vectors, x, y)
  return tile
}

function fillCell(tile: Float32Array, vectors: Float32Array, x: number, y: number): void {
  const upper = y * CELLS
  const lower = ((y + 1) % CELLS) * CELLS
  const a = 2 * (upper + x)
  const b = 2 * (upper + ((x + 1) % CELLS))
  const c = 2 * (lower + x)
  const d = 2 * (lower + ((x + 1) % CELLS))
  for (let j = 0; j < FINE; j++) {
    const v = steps[j]!
    for (let i = 0; i < FINE; i++) {
      const u = steps[i]!
      const above = (vectors[a]! * u + vectors[a + 1]! * v) * (1 - eased[i]!) + (vectors[b]! * (u - 1) + vectors[b + 1]! * v) * eased[i]!
      const below = (vectors[c]! * u + vectors[c + 1]! * (v - 1)) * (1 - eased[i]!) + (vectors[d]! * (u - 1) + vectors[d + 1]! * (v - 1)) * eased[i]!
      tile[(FINE * y + j) * SIDE + FINE * x + i] = above * (1 - eased[j]!) + below * eased[j]!
    }
  }
}

/** Faster than Math.floor where it is called for every cell. */
export const floor = (x: number): number => (x < 0 ? (x | 0) - 1 : x | 0)
