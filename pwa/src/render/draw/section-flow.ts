import type { FrameLook } from '../frame'
import { hidden } from '../jet'
import type { Place } from '../layout'
import { blocks, facingOf, project, sectionDepth, turn, type Point, type View } from '../view'
import { flowArrow, type Box } from './marks'
import type { Notes } from './notes'
import type { Palette } from './palette'
import { line, stroke, type Pen } from './pen'

/** Whether an opening's wall runs away from the eye. */
export function edgeOn(view: View, place: Place): boolean {
  return Math.abs(turn(view, place.x1, place.y1).along - turn(view, place.x0, place.y0).along) < 0.01
}

/** A level line on the picture. */
export interface Line { left: Point; right: Point }

/** Arrows for what flows through an opening, kept free of figures, and its neutral plane, which is returned where there is one. */
export function drawFlow(pen: Pen, view: View, palette: Palette, place: Place, frame: FrameLook, notes: Notes): Line | undefined {
  const look = frame.openings[place.index]
  const facing = facingOf(view, place)
  if (!look || (facing && hidden(facing))) return undefined
  const p = turn(view, place.x0, place.y0)
  const q = turn(view, place.x1, place.y1)
  const a0 = Math.min(p.along, q.along)
  const a1 = Math.max(p.along, q.along)
  const depth = sectionDepth(view, place)
  const at = (a: number, z: number) => project(view, a, z, depth)
  const inC = inflowC(view, place, frame)
  const arrow = (from: Point, toward: Point, kgS: number, gasC: number) => notes.take(flowArrow(pen, palette, from, toward, kgS, gasC))
  const gap = (z0: number, z1: number) => {
    pen.ctx.save()
    pen.ctx.globalAlpha *= look.open > 0.02 ? 1 : 0.25
    line(pen, at(a0, z0), at(a1, z1), palette.air, 5)
    pen.ctx.restore()
  }
  if (place.z0 === place.z1) {
    gap(place.z0, place.z0)
    const middle = at((a0 + a1) / 2, place.z0)
    arrow(middle, { x: 0, y: upward(place, view) }, look.outKgS, look.outTempC)
    arrow({ x: middle.x + 9 * pen.pixel, y: middle.y }, { x: 0, y: -upward(place, view) }, look.inKgS, inC)
    return undefined
  }
  const thin = edgeOn(view, place)
  const share = Number.isFinite(look.neutralPlane) ? look.neutralPlane : 0.5
  const z = place.z0 + share * (place.z1 - place.z0)
  if (thin) gap(place.z0, place.z1)
  else {
    const outline = [at(a0, place.z1), at(a1, place.z1), at(a1, place.z0), at(a0, place.z0)]
    stroke(pen, outline, palette.cut, 1.4)
    notes.shun(around(outline, MARK * pen.pixel))
  }
  const toward = thin ? { x: outward(view, place), y: 0 } : { x: -0.75, y: 0.3 }
  const x = (a0 + a1) / 2
  arrow(at(x, (z + place.z1) / 2), toward, look.outKgS, look.outTempC)
  arrow(at(x, (z + place.z0) / 2), { x: -toward.x, y: -toward.y }, look.inKgS, inC)
  if (look.flow !== 3 || look.open <= 0.02) return undefined
  return dashed(pen, palette, at(a0, z), at(a1, z), (thin ? 0.06 : 0.02) * view.heightM)
}

/** Screen pixels from an opening to the marks around it when it is chosen. */
const MARK = 7

function around(points: readonly Point[], by: number): Box {
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
  return { x0: Math.min(...xs) - by, y0: Math.min(...ys) - by, x1: Math.max(...xs) + by, y1: Math.max(...ys) + by }
}

/** A neutral plane, on a line of paper's colour: hot gas has the colour of the dashes. */
function dashed(pen: Pen, palette: Palette, from: Point, to: Point, reach: number): Line {
  const left = { x: from.x - reach, y: from.y }
  const right = { x: to.x + reach, y: to.y }
  line(pen, left, right, palette.paper, 3.6)
  pen.ctx.setLineDash([4 * pen.pixel, 3 * pen.pixel])
  line(pen, left, right, palette.mark, 1.6)
  pen.ctx.setLineDash([])
  return { left, right }
}

/** Temperature of the gas that comes in: that of the layer it leaves on the other side; air from outside has none. */
function inflowC(view: View, place: Place, frame: FrameLook): number {
  const index = view.layout.boxes.findIndex(({ id }) => id === place.opening.to)
  const [box, look] = [view.layout.boxes[index], frame.compartments[index]]
  if (!box || !look) return NaN
  const height = (place.z0 + place.z1) / 2 - box.z0
  return height > (Number.isFinite(look.interfaceM) ? look.interfaceM : Infinity) ? look.upperC : look.lowerC
}

/** Sign of "out of `from`" along the picture for an opening seen edge on. */
function outward(view: View, place: Place): number {
  const from = blocks(view).find((b) => b.box.id === place.opening.from)
  const p = turn(view, place.x0, place.y0)
  return from && p.along < (from.a0 + from.a1) / 2 ? -1 : 1
}

/** Sign of "out of `from`" upward (-1) or downward (1) for an opening in a floor. */
function upward(place: Place, view: View): number {
  const from = view.layout.boxes.find((b) => b.id === place.opening.from)
  return from && place.z0 > (from.z0 + from.z1) / 2 ? -1 : 1
}
