import type { Point } from '../view'
import { label, labelBox, type Align, type Box } from './marks'
import type { Palette } from './palette'
import type { Pen } from './pen'

/** Where a figure may stand: the foot of its text, and the end of it that lies there. */
export interface Spot extends Point { align: Align }

const meet = (a: Box, b: Box) => a.x0 < b.x1 && b.x0 < a.x1 && a.y0 < b.y1 && b.y0 < a.y1

/** The figures of one picture: none is written over another, nor over an arrow. */
export class Notes {
  readonly #taken: Box[] = []
  readonly #shunned: Box[] = []

  constructor(private readonly pen: Pen, private readonly palette: Palette) {}

  /** Keeps a place free of figures. */
  take(box: Box | undefined): void {
    if (box) this.#taken.push(box)
  }

  /** Keeps a place free of figures that can stand elsewhere. */
  shun(box: Box): void {
    this.#shunned.push(box)
  }

  /** Writes at the first spot that is free and says whether there was one; what must be told stands at the first of all if none is. */
  write(text: string, spots: readonly Spot[], must = false): boolean {
    const clearOf = (boxes: readonly Box[]) => (spot: Spot) => !boxes.some((box) => meet(box, labelBox(this.pen, text, spot)))
    const free = spots.filter(clearOf(this.#taken))
    const spot = free.find(clearOf(this.#shunned)) ?? free[0] ?? (must ? spots[0] : undefined)
    if (!spot) return false
    label(this.pen, this.palette, text, spot.x, spot.y, spot.align)
    this.take(labelBox(this.pen, text, spot))
    return true
  }
}
