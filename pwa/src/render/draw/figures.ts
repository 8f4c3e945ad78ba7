import type { CompartmentLook } from '../frame'
import { project, type Block, type View } from '../view'
import { label } from './marks'
import type { Palette } from './palette'
import type { Pen } from './pen'

/** How far the wall has faded, 0 to 1; the units; whether there is space for one figure a layer only; and the right edge of what is in the picture. */
export interface Cut { faded: number; outsideC: number; us: boolean; brief: boolean; rightM: number }

/** Air holds a little more oxygen than this; from here down it is written beside the temperature. */
const FRESH = 0.203
/** Layers that differ by less than this are one to a person: chosen by us. */
const LAYERED_C = 3
/** Screen pixels that a figure takes from its side of a compartment. */
export const FIGURE = 54
const LINE = 16 // screen pixels from one figure to the next below it

/** The figures of a compartment: the temperature of each layer, and the oxygen of the upper one, where there is space. */
export function drawFigures(pen: Pen, view: View, palette: Palette, b: Block, look: CompartmentLook, cut: Cut): void {
  const tall = (b.z1 - b.z0) / pen.pixel
  const wide = (b.a1 - b.a0) / pen.pixel
  if (tall < 26 || wide < 52) return
  const temp = (c: number) => (cut.us ? `${Math.round(c * 1.8 + 32)} °F` : `${Math.round(c)} °C`)
  const inset = 7 * pen.pixel
  const left = project(view, b.a0, b.z1, b.d0).x + inset
  const right = project(view, b.a1, b.z1, b.d0).x - inset
  const top = project(view, b.a0, b.z1, b.d0).y
  const foot = project(view, b.a0, b.z0, b.d0).y - inset
  const below = (n: number) => top + (14 + n * LINE) * pen.pixel
  if (!Number.isFinite(look.interfaceM) || look.upperC - look.lowerC < LAYERED_C) {
    label(pen, palette, temp(look.lowerC), left, foot, 'left')
    return
  }
  // Under a low roof it stands away from what the screen writes in the picture's upper left corner.
  const aside = cut.brief && tall <= 60
  label(pen, palette, temp(look.upperC), aside ? right : left, below(0), aside ? 'right' : 'left')
  if (tall > 60) label(pen, palette, temp(look.lowerC), left, foot, 'left')
  if (look.o2Upper > FRESH) return
  const oxygen = `O₂ ${(100 * look.o2Upper).toFixed(0)} %`
  if (wide > 130) label(pen, palette, oxygen, right, below(0), 'right')
  else if (tall > 60 && wide > 70) label(pen, palette, oxygen, left, below(1), 'left')
}
