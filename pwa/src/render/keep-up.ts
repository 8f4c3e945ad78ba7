import { FINENESS } from './picture'

/** Script time of one picture that a slow phone may take; above it the smoke is drawn coarser. Design figure. */
export const BUDGET_MS = 4
/** How long it must be late before it gets coarser: well within a second. Chosen by us. */
const LATE_S = 0.6
/** Time over which script times are averaged, and the share of the budget that the mean may take so that the slowest still fit. Chosen by us. */
const MEAN_S = 0.3
const FITS = 0.6

/** Decides how fine the smoke may be drawn on this device, from what its pictures take. It only ever gets coarser. */
export class KeepUp {
  /** Index into FINENESS. */
  fineness = 0
  #mean = 0
  #late = 0

  /** What a picture will about take, known before the first is shown. */
  expect(ms: number): void {
    this.#mean = ms
  }

  /** Takes note of one picture: its script time, and the time since the one before. */
  note(tookMS: number, seconds: number): void {
    const took = Math.min(tookMS, 4 * BUDGET_MS) // one that was held up tells little
    this.#mean += Math.min(1, seconds / MEAN_S) * (took - this.#mean)
    const most = FITS * BUDGET_MS
    this.#late = this.#mean > most ? this.#late + seconds : Math.max(0, this.#late - 0.5 * seconds)
    if (this.#late < LATE_S) return
    const fits = (FINENESS[this.fineness]! * most) / this.#mean
    this.fineness = Math.min(FINENESS.length - 1, Math.max(this.fineness + 1, FINENESS.findIndex((cells) => cells <= fits)))
    if (FINENESS.at(-1)! > fits) this.fineness = FINENESS.length - 1
    this.#mean = 0
    this.#late = 0
  }
}
