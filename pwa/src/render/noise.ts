import { floor, Lumps } from './lumps'

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
    return a * (1 - fy) + b * fy
  }

  /** Two grains of noise, the second at twice the frequency and half the height. */
  rough(x: number, y: number): number {
    return 0.67 * this.at(x, y) + 0.33 * this.at(2 * x + 17.3, 2 * y + 5.1)
  }
}

const ease = (x: number) => x * x * (3 - 2 * x)
