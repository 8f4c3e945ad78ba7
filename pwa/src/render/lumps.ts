// Lumps: round heads upon broader heads, over points scattered one to a cell of a
// lattice (cellular noise, Worley 1996; from memory, to be confirmed). Noise that
// crosses zero draws creases like those of quilted cloth; these close round each
// head, as on a cauliflower. They are laid down once on a fine tile and read askew
// to the picture, so that no line of it lies level or upright.

/**
 * A place in noise, which heads show there, and the value that was read. It is an array since numbers
 * that go from function to function by themselves become garbage: hundreds of
 * kilobytes of it for each step of smoke, and a collection every few pictures.
 */
export type Spot = Float64Array
export const X = 0
export const Y = 1
export const VALUE = 2
export const SHOWS = 3
export const makeSpot = (): Spot => new Float64Array(4)

const CELLS = 16 // heads across the tile, which repeats: few, as laying them takes a slow phone a while
const FINE = 8 // samples a cell: with straight lines between them no corner shows (chosen by us)
const SIDE = CELLS * FINE

// By an angle of half the golden ratio's slope, 31.7 degrees: no short row of
// cells comes back to level (chosen by us).
const TURN_X = 0.8506508083520399
const TURN_Y = 0.5257311121191336

/** Mean distance from zero: that of the value noise, by which streaks are drawn, 17/48. */
const MEAN = 0.354

// Heads stand on broader heads, and, where they are large enough on the picture,
// lesser ones on them: each of half the size and so much of the height. Chosen by us, by eye.
const HEAD_HIGH = 0.6
const LESSER_HIGH = 0.36

// Heads of which a cell of the picture is so much start to lose the lesser ones on
// them, and of so much carry none: cells could not draw them. Chosen by us.
const LESSER_FROM = 0.1
const LESSER_GONE = 0.16

// Coarser cells show few heads at a time, and heads as broad again would pass before one
// sees that they move: the broader ones under them give way, over these shares, but for
// so much, since heads of one size look dotted. Chosen by us, by eye.
const BROAD_FROM = 0.16
const BROAD_LEAST = 0.22
const BROAD_LEFT = 0.3

/** Which heads show where a cell is so much of one: 1 with all lesser ones on them, 0 without, down to -1 as the broader ones under them give way. */
export const headsIn = (perCell: number): number =>
  within01((LESSER_GONE - perCell) / (LESSER_GONE - LESSER_FROM)) - within01((perCell - BROAD_FROM) / (BROAD_LEAST - BROAD_FROM))

/** A tile of lumps, from a stream of random numbers between 0 and 1. It must be laid before it is read. */
export class Lumps {
  /** Heads by themselves, on broader ones, and those with lesser ones on them. */
  readonly #flat = new Float32Array(SIDE * SIDE)
  readonly #bare = new Float32Array(SIDE * SIDE)
  readonly #rich = new Float32Array(SIDE * SIDE)
  readonly #broad: Scatter
  readonly #heads: Scatter
  readonly #lesser: Scatter
  #rows = 0

  constructor(next: () => number) {
    this.#broad = scatter(next, CELLS / 2)
    this.#heads = scatter(next, CELLS)
    this.#lesser = scatter(next, 2 * CELLS)
  }

  /** Lays more of the tile, for about so many ms of script. Returns whether all of it is laid. */
  lay(ms: number): boolean {
    const began = performance.now()
    while (this.#rows < SIDE && performance.now() - began < ms) {
      this.#layRow(this.#rows)
      if (++this.#rows === SIDE) {
        level(this.#flat)
        level(this.#bare)
        level(this.#rich)
      }
    }
    return this.#rows === SIDE
  }

  #layRow(row: number): void {
    const y = row / FINE
    for (let k = 0; k < SIDE; k++) {
      const x = k / FINE
      const broad = headAt(this.#broad, x / 2, y / 2)
      const heads = HEAD_HIGH * headAt(this.#heads, x, y)
      const bare = broad + heads
      this.#flat[row * SIDE + k] = BROAD_LEFT * broad + heads
      this.#bare[row * SIDE + k] = bare
      this.#rich[row * SIDE + k] = bare + LESSER_HIGH * headAt(this.#lesser, 2 * x, 2 * y)
    }
  }

  /** The height at a spot, about -1 to 1; one unit is one head. */
  read(spot: Spot): void {
    const shows = spot[SHOWS]!
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
    const share = shows < 0 ? -shows : shows
    let sum = 0
    if (share > 0) sum = share * between(shows > 0 ? this.#rich : this.#flat, top, bottom, left, right, u - x0, v - y0)
    if (share < 1) sum += (1 - share) * between(this.#bare, top, bottom, left, right, u - x0, v - y0)
    spot[VALUE] = sum
  }
}

/** Straight lines between four samples of a tile. */
function between(tile: Float32Array, top: number, bottom: number, left: number, right: number, across: number, down: number): number {
  const a = tile[top + left]! + across * (tile[top + right]! - tile[top + left]!)
  const b = tile[bottom + left]! + across * (tile[bottom + right]! - tile[bottom + left]!)
  return a + down * (b - a)
}

/** Points scattered one to a lattice cell on a square that repeats: how far across and down it lies in it, and how far its head reaches. */
interface Scatter { points: Float32Array; side: number }

// How far from the middle of its cell a point may lie, as a share of the cell, and by
// how much more the broadest head reaches than the smallest: their creases are bent,
// where those between heads of a size are straight. Chosen by us, by eye.
const SCATTERED = 0.9
const REACHES = 0.4

function scatter(next: () => number, side: number): Scatter {
  const points = new Float32Array(3 * side * side)
  for (let k = 0; k < points.length; k += 3) {
    points[k] = 0.5 + SCATTERED * (next() - 0.5)
    points[k + 1] = 0.5 + SCATTERED * (next() - 0.5)
    points[k + 2] = REACHES * next()
  }
  return { points, side }
}

/** Height of a round head over its point: 0 in the crease, where the next head begins. */
function headAt({ points, side }: Scatter, x: number, y: number): number {
  const x0 = floor(x)
  const y0 = floor(y)
  let nearest = Infinity
  let second = Infinity
  for (let j = y0 - 1; j <= y0 + 1; j++) {
    for (let i = x0 - 1; i <= x0 + 1; i++) {
      const at = 3 * ((j & (side - 1)) * side + (i & (side - 1)))
      const across = i + points[at]! - x
      const down = j + points[at + 1]! - y
      const far = Math.sqrt(across * across + down * down) - points[at + 2]!
      if (far < nearest) {
        second = nearest
        nearest = far
      } else if (far < second) second = far
    }
  }
  const within = Math.min(1, second - nearest)
  return within * (2 - within)
}

/** Takes the mean away, and brings the mean distance from it to MEAN. */
function level(tile: Float32Array): void {
  const mean = tile.reduce((sum, value) => sum + value, 0) / tile.length
  const off = tile.reduce((sum, value) => sum + Math.abs(value - mean), 0) / tile.length
  for (let k = 0; k < tile.length; k++) tile[k] = ((tile[k]! - mean) * MEAN) / off
}

/** Faster than Math.floor where it is called for every cell. */
export const floor = (x: number): number => (x < 0 ? (x | 0) - 1 : x | 0)

const within01 = (x: number) => (x < 0 ? 0 : x > 1 ? 1 : x)
