// How much fire is owed to the time that has passed. What a slow device cannot
// keep up with is let go, and the rate it manages is told; what passed while the
// page was hidden is caught up with.

/** A longer gap between two beats means that the page was hidden, s. */
const GAP_S = 1
/** At most this much time away is caught up with, s; after longer the fire stands where it was left, plus this. Chosen by us. */
const MOST_AWAY_S = 60
/** The rate told is a mean over about this long, s. */
const RATE_OVER_S = 2

export class Pace {
  #due = 0
  #missed = 0
  #realS = 0
  #fireS = 0

  /** Fire still to be caught up with, s. */
  get behindS(): number { return this.#missed }

  /** Fire seconds to a real second, as measured; undefined before a second has passed. */
  get rate(): number | undefined { return this.#realS < 1 ? undefined : this.#fireS / this.#realS }

  /** Real time has passed at a speed: so much fire is owed. */
  owe(realS: number, speed: number): void {
    if (realS > GAP_S) this.#missed += Math.min(realS, MOST_AWAY_S) * speed
    else this.#due = Math.min(this.#due + realS * speed, GAP_S * speed)
  }

  /** Takes up to so many seconds of what is owed; 0 when nothing is. */
  take(mostS: number): number {
    const now = Math.min(mostS, this.#due)
    this.#due -= now
    const late = Math.min(mostS - now, this.#missed)
    this.#missed -= late
    return now + late
  }

  /** Puts back what was taken and not used. */
  giveBack(seconds: number): void {
    this.#due += seconds
  }

  /** Notes how much fire one beat brought; catching up, and going back, are no measure of the rate. */
  note(realS: number, fireS: number): void {
    if (realS <= 0 || realS > GAP_S || fireS < 0 || this.#missed > 0) return
    const stays = Math.exp(-realS / RATE_OVER_S)
    this.#realS = stays * this.#realS + realS
    this.#fireS = stays * this.#fireS + fireS
  }

  /** Nothing is owed any more, and what was measured no longer counts: another speed, a pause. */
  settle(): void {
    this.#due = 0
    this.#missed = 0
    this.#realS = 0
    this.#fireS = 0
  }
}
