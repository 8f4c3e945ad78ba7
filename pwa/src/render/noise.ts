import { floor, Lumps, makeSpot, VALUE, X, Y } from './lumps'

// Seeded noise that is the same on every machine: integer hashing, then
// smooth interpolation on a small tile that repeats.

/** A random number generator with 32 bits of state: xorshift (Marsaglia 2003, from memory, to be confirmed). */
export function random(seed: number): () => number {
  let state = (seed | 0) || 0x9e3779b9
  return () => {
    state ^= state << 13
    state ^= state >>> 17
    state ^= state << 5
    return (state >>> 0) / 4294967296
  }
}

const SIDE = 64
const MASK = SIDE - 1

let last: { seed: number; noise: Noise } | undefined

/** The noise of a seed, begun once while the seed stays the same: every picture of the app shares one. */
export function noiseOf(seed: number): Noise {
  if (last?.seed !== seed) last = { seed, noise: new Noise(seed) }
  return last.noise
}

/** A repeating tile of values between -1 and 1, read with smooth interpolation. */
export class Noise {
  /** Lumps of the same seed, for heads and the creases between them. */
  readonly lumps: Lumps
  /** Where it is read, in the loops over all cells. */
  readonly spot = makeSpot()
  readonly #tile: Float32Array
  constructor(seed: number) {
    this.lumps = new Lumps(random(seed ^ 0x51f15e))
    const next = random(seed)
    this.#tile = Float32Array.from({ length: SIDE * SIDE }, () => next() * 2 - 1)
  }

  /** Makes it ready, for about so many ms of script at a time: a slow phone takes a while. Returns whether it is. */
  makeReady(ms = Infinity): boolean { return this.lumps.lay(ms) }

  /** The value at a point; one unit is one grain of the noise. */
  at(x: number, y: number): number {
    this.spot[X] = x
    this.spot[Y] = y
    this.read()
    return this.spot[VALUE]!
  }

  /** Two grains of noise, the second at twice the frequency and half the height. */
  rough(x: number, y: number): number {
    this.spot[X] = x
    this.spot[Y] = y
    this.readRough()
    return this.spot[VALUE]!
  }

  /** The value at its spot. */
  read(): void {
    const { spot } = this
    const x = spot[X]!
    const y = spot[Y]!
    const x0 = floor(x)
    const y0 = floor(y)
    const fx = ease(x - x0)
    const fy = ease(y - y0)
    const left = x0 & MASK
    const right = (x0 + 1) & MASK
    const top = (y0 & MASK) * SIDE
    const bottom = ((y0 + 1) & MASK) * SIDE
    const tile = this.#tile
    const a = tile[top + left]! * (1 - fx) + tile[top + right]! * fx
    const b = tile[bottom + left]! * (1 - fx) + tile[bottom + right]! * fx
    spot[VALUE] = a * (1 - fy) + b * fy
  }

  /** Two grains of noise at its spot, which is elsewhere then. */
  readRough(): void {
    const { spot } = this
    const x = spot[X]!
    const y = spot[Y]!
    this.read()
    const broad = spot[VALUE]!
    spot[X] = 2 * x + 17.3
    spot[Y] = 2 * y + 5.1
    this.read()
    spot[VALUE] = 0.67 * broad + 0.33 * spot[VALUE]!
  }
}

const ease = (x: number) => x * x * (3 - 2 * x)
