import { temperatureIn } from '../../words/temperature'
import type { CompartmentLook } from '../frame'
import { project, type Block, type View } from '../view'
import type { Align } from './marks'
import type { Notes, Spot } from './notes'
import type { Pen } from './pen'

/** How far the wall has faded, 0 to 1; the units; whether there is space for one figure a layer only; and the edges of what is in the picture. */
export interface Cut { faded: number; outsideC: number; us: boolean; brief: boolean; leftM: number; rightM: number }

/** Air holds a little more oxygen than this; from here down it is written beside the temperature. */
const FRESH = 0.203
/** Layers that differ by less than this are one to a person: chosen by us. */
const LAYERED_C = 3
/** Screen pixels that a figure takes from its side of a compartment. */
export const FIGURE = 54
const LINE = 16 // screen pixels from one figure to the next below it

/** The figures of a compartment: the temperature of each layer, and the oxygen of the upper one, where there is space. */
export function drawFigures(pen: Pen, view: View, notes: Notes, b: Block, look: CompartmentLook, cut: Cut): void {
  const tall = (b.z1 - b.z0) / pen.pixel
  const wide = (b.a1 - b.a0) / pen.pixel
  if (tall < 26 || wide < 52) return
  const temp = (c: number) => temperatureIn(c, cut.us)
  const spot = spotsOf(pen, view, b)
  const foot = [spot.foot('left'), spot.foot('right')]
  if (!Number.isFinite(look.interfaceM) || look.upperC - look.lowerC < LAYERED_C) {
    notes.write(temp(look.lowerC), foot, true)
    return
  }
  // Under a low roof it stands away from what the screen writes in the picture's upper left corner.
  const [first, other]: [Align, Align] = cut.brief && tall <= 60 ? ['right', 'left'] : ['left', 'right']
  notes.write(temp(look.upperC), [spot.line(0, first), spot.line(0, other)], true)
  if (tall > 60) notes.write(temp(look.lowerC), foot, true)
  if (look.o2Upper > FRESH) return
  const beside = wide > 130 ? [spot.line(0, 'right')] : []
  const beneath = tall > 60 && wide > 70 ? [spot.line(1, 'left'), spot.line(1, 'right')] : []
  notes.write(`O₂ ${(100 * look.o2Upper).toFixed(0)} %`, [...beside, ...beneath])
}

/** Where figures stand in a compartment: on lines from its ceiling down, and at its floor. */
function spotsOf({ pixel }: Pen, view: View, b: Block): { line(n: number, align: Align): Spot; foot(align: Align): Spot } {
  const inset = 7 * pixel
  const high = project(view, b.a0, b.z1, b.d0)
  const low = project(view, b.a1, b.z0, b.d0)
  const x = (align: Align) => (align === 'left' ? high.x + inset : low.x - inset)
  return {
    line: (n, align) => ({ x: x(align), y: high.y + (14 + n * LINE) * pixel, align }),
    foot: (align) => ({ x: x(align), y: low.y - inset, align }),
  }
}
