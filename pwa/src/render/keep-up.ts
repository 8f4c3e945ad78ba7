import { FINENESS } from './picture'

/** Script time of one picture that a slow phone may take; above it the smoke is drawn coarser. Design figure. */
export const BUDGET_MS = 4
/** How long it must be late before it gets coarser: well within a second. Chosen by us. */
const LATE_S = 0.4
/** The longest that one picture counts as late: a page that was held up once says nothing of the next. Chosen by us. */
const ONE_COUNTS_S = 0.25
/** Time over which script times are averaged, and the share of the budget that the mean may take so that the slowest still fit. Chosen by us. */
const MEAN_S = 0.3
const FITS = 0.6
const MOST_MS = FITS * BUDGET_MS

/** Decides how fine the smoke may be drawn on this device, from what its pictures take. It only ever gets coarser. */
export class KeepUp {
  /** Index into FINENESS. */
  fineness = 0
  #before = 0
  #mean = 0
  #late = 0

  /** What a picture will about take, in ms a cell: known before the first is shown. */
  expect(msPerCell: number): void {
    this.fineness = Math.max(this.fineness, finest(MOST_MS / msPerCell))
  }

  /** Takes note of one picture: its script time, and the time since the one before. */
  note(tookMS: number, seconds: number): void {
    const took = Math.min(tookMS, 4 * BUDGET_MS) // one that was held up tells little
    const both = (took + this.#before) / 2 // a fast screen steps in one picture and paints in the next
    this.#before = took
    this.#mean += Math.min(1, seconds / MEAN_S) * (took - this.#mean)
    this.#late = both > MOST_MS ? this.#late + Math.min(seconds, ONE_COUNTS_S) : Math.max(0, this.#late - 0.5 * seconds)
    if (this.#late < LATE_S) return
    const cells = (FINENESS[this.fineness]! * MOST_MS) / Math.max(MOST_MS, this.#mean)
    this.fineness = Math.min(FINENESS.length - 1, Math.max(this.fineness + 1, finest(cells)))
    this.#before = this.#mean = this.#late = 0
  }
}

/** Index of the finest of FINENESS with no more than so many cells, or the coarsest. */
function finest(cells: number): number {
  const at = FINENESS.findIndex((count) => count <= cells)
  return at < 0 ? FINENESS.length - 1 : at
}
