/** A seeded generator (mulberry32, public domain): a history that failed can be lived again. */
export class Chance {
  #state: number
  constructor(seed: number) {
    this.#state = seed | 0
  }

  /** A number from 0 up to 1. */
  next(): number {
    this.#state = (this.#state + 0x6d2b79f5) | 0
    let t = Math.imul(this.#state ^ (this.#state >>> 15), 1 | this.#state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }

  /** A whole number from 0 to n - 1. */
  below(n: number): number {
    return Math.floor(this.next() * n)
  }

  /** True in so many of one hundred. */
  percent(share: number): boolean {
    return this.next() * 100 < share
  }

  hex = (bytes: number): string => {
    let text = ''
    for (let n = 0; n < bytes; n++) text += this.below(256).toString(16).padStart(2, '0')
    return text
  }

  /** Lets others run first, for a random while: this is how two tabs get in each other's way. */
  async pause(): Promise<void> {
    for (let n = this.below(4); n > 0; n--) await Promise.resolve()
  }
}
