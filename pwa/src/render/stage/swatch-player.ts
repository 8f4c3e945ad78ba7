import type { Sheet } from '../draw/pen'
import { drawSwatch, type SwatchShowing } from '../swatch'
import type { PageLook } from './told'

// Swatches move, all by one clock, at a rate that a slow phone keeps up with
// and that shows a drift (chosen by us). Whoever asked for less motion gets
// stills: they move only until their smoke is there.
const FRAMES_PER_S = 20
const MOST_MS = 4 // of script in one picture; on a slow phone swatches then take turns

interface Swatch {
  canvas: Sheet
  shows?: Omit<SwatchShowing, 'theme'>
  /** As it stands, it needs no more drawing. */
  done: boolean
}

/** All swatches of a page. */
export class SwatchPlayer {
  readonly #swatches = new Map<number, Swatch>()
  #began = NaN
  #last = -Infinity

  add(id: number, canvas: Sheet): void {
    if (this.#swatches.size === 0) this.#began = NaN
    this.#swatches.set(id, { canvas, done: false })
  }

  show(id: number, shows: Omit<SwatchShowing, 'theme'>): void {
    const one = this.#swatches.get(id)
    if (one) Object.assign(one, { shows, done: false })
  }

  remove(id: number): void { this.#swatches.delete(id) }

  /** The page looks another way: what stood still is drawn once more. */
  again(): void {
    for (const one of this.#swatches.values()) one.done = false
  }

  tick(now: number, { theme, calm }: PageLook): void {
    if (now - this.#last < 1000 / FRAMES_PER_S) return
    this.#last = now
    if (Number.isNaN(this.#began)) this.#began = now
    const began = performance.now()
    const waiting = [...this.#swatches]
    for (const [id, one] of waiting) {
      if (performance.now() - began >= MOST_MS) return
      if (!one.shows || one.done) continue
      one.done = drawSwatch(one.canvas, { ...one.shows, theme }, (now - this.#began) / 1000) && calm
      this.#swatches.delete(id) // to the end of the line, so that all come to their turn
      this.#swatches.set(id, one)
    }
  }
}
