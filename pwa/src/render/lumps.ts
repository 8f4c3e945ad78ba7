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

const quintic = (t: number) => t * t * t * (t * (t * 6 - 15) + 10)

function raw(vectors: Float32Array): Float32Array {
  const tile = new Float32Array(SIDE * SIDE)
  for (let j = 0; j < SIDE; j++) for (let i = 0; i < SIDE; i++) tile[j * SIDE + i] = gradient(vectors, i / FINE, j / FINE)
  return tile
}

function gradient(vectors: Float32Array, x: number, y: number): number {
  const x0 = Math.floor(x)
  const y0 = Math.floor(y)
  const along = (dx: number, dy: number) => {
    const k = 2 * (((y0 + dy) % CELLS) * CELLS + ((x0 + dx) % CELLS))
    return vectors[k]! * (x - x0 - dx) + vectors[k + 1]! * (y - y0 - dy)
  }
  const fx = quintic(x - x0)
  const fy = quintic(y - y0)
  const upper = along(0, 0) * (1 - fx) + along(1, 0) * fx
  const lower = along(0, 1) * (1 - fx) + along(1, 1) * fx
  return upper * (1 - fy) + lower * fy
}

/** Faster than Math.floor where it is called for every cell. */
export const floor = (x: number): number => (x < 0 ? (x | 0) - 1 : x | 0)
