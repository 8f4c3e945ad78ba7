import type { CompartmentLook, FrameLook } from '../frame'
import { hidden } from '../jet'
import type { Place } from '../layout'
import { blocks, facingOf, project, sectionDepth, turn, type Block, type View } from '../view'
import { drawFire } from './flame'
import { flowArrow, label } from './marks'
import type { Palette } from './palette'
import { fill, line, stroke, type Pen } from './pen'

// The wall drawn away: a section just behind it, in the same place on the
// picture. Each compartment shows its two layers, its temperatures and oxygen,
// and where it burns; each opening its flow and its neutral plane.

/** How far the wall has faded, 0 to 1; the units; and whether there is space for one figure a layer only. */
export interface Cut { faded: number; outsideC: number; us: boolean; brief: boolean }

export function drawCutaway(pen: Pen, view: View, palette: Palette, frame: FrameLook, cut: Cut, time: number): void {
  if (cut.faded <= 0) return
  const { ctx } = pen
  ctx.save()
  ctx.globalAlpha = cut.faded
  const shown = blocks(view).filter((block, _, all) => nearest(block, all))
  for (const block of shown) {
    const index = view.layout.boxes.indexOf(block.box)
    const look = frame.compartments[index]
    if (look) drawCompartment(pen, view, palette, block, look, cut, time)
  }
  const inSection = new Set(shown.map(({ box }) => box.id))
  for (const place of view.layout.places) {
    const joins = [place.opening.from, place.opening.to].filter((id) => inSection.has(id)).length
    if (joins === 0) continue
    const toRoomBehind = joins === 1 && place.opening.to !== 'outside'
    if (toRoomBehind && edgeOn(view, place)) continue // in another wall, farther in
    ctx.globalAlpha = cut.faded * (toRoomBehind ? 0.45 : 1)
    drawFlow(pen, view, palette, place, frame)
  }
  ctx.restore()
}

/** Whether an opening's wall runs away from the eye. */
function edgeOn(view: View, place: Place): boolean {
  return Math.abs(turn(view, place.x1, place.y1).along - turn(view, place.x0, place.y0).along) < 0.01
}

/** Only compartments right behind the wall are in the section; those farther in lie behind them. */
function nearest(block: Block, all: Block[]): boolean {
  return !all.some((o) => o !== block && o.d0 < block.d0 - 0.01 &&
    Math.min(o.a1, block.a1) - Math.max(o.a0, block.a0) > 0.05 && Math.min(o.z1, block.z1) - Math.max(o.z0, block.z0) > 0.05)
}

function drawCompartment(
  pen: Pen, view: View, palette: Palette, b: Block, look: CompartmentLook, cut: Cut, time: number,
): void {
  const at = (a: number, z: number) => project(view, a, z, b.d0)
  const quad = (z0: number, z1: number) => [at(b.a0, z1), at(b.a1, z1), at(b.a1, z0), at(b.a0, z0)]
  const height = b.z1 - b.z0
  const layer = Number.isFinite(look.interfaceM) ? Math.max(0, Math.min(height, look.interfaceM)) : height
  fill(pen, quad(b.z0, b.z1), palette.air)
  if (layer > 0) fill(pen, quad(b.z0, b.z0 + layer), heatColour(palette, look.lowerC, cut.outsideC, 0.8))
  if (layer < height) {
    fill(pen, quad(b.z0 + layer, b.z1), heatColour(palette, look.upperC, cut.outsideC, 1))
    line(pen, at(b.a0, b.z0 + layer), at(b.a1, b.z0 + layer), palette.cut, 1.2)
  }
  if (look.hrrKW > 0.2) drawFire(pen, view, b, b.d0, look.hrrKW, time)
  stroke(pen, quad(b.z0, b.z1), palette.cut, 3)
  figures(pen, view, palette, b, look, cut)
}

/** Temperature as depth of colour: air is paper, warm gas ochre, hot gas ember. Never green. */
function heatColour({ warm, hot }: Palette, gasC: number, outsideC: number, strength: number): string {
  const rise = Math.max(0, gasC - outsideC)
  const full = Math.min(1, rise / 600) // 600 C of rise is the deepest colour: the usual flashover layer, chosen by us
  const mix = warm.map((w, k) => Math.round(w + (hot[k]! - w) * full))
  const alpha = strength * Math.min(0.95, rise / 60)
  return `rgba(${mix[0]},${mix[1]},${mix[2]},${alpha.toFixed(3)})`
}

function figures(pen: Pen, view: View, palette: Palette, b: Block, look: CompartmentLook, cut: Cut): void {
  const height = b.z1 - b.z0
  const tall = height / pen.pixel
  if (tall < 26) return
  const temp = (c: number) => (cut.us ? `${Math.round(c * 1.8 + 32)} °F` : `${Math.round(c)} °C`)
  const left = (z: number) => project(view, b.a0, z, b.d0)
  const right = (z: number) => project(view, b.a1, z, b.d0)
  const inset = 7 * pen.pixel
  const top = left(b.z1)
  const aside = cut.brief && tall <= 60 // under a low roof, away from the clock that stands in the picture's corner
  if (aside) label(pen, palette, temp(look.upperC), right(b.z1).x - inset, top.y + 14 * pen.pixel, 'right')
  else label(pen, palette, temp(look.upperC), top.x + inset, top.y + 14 * pen.pixel, 'left')
  if (cut.brief && tall > 60) label(pen, palette, temp(look.lowerC), left(b.z0).x + inset, left(b.z0).y - inset, 'left')
  if (cut.brief) return
  const wide = (b.a1 - b.a0) / pen.pixel
  if (tall > 60) label(pen, palette, temp(look.lowerC), left(b.z0).x + inset, left(b.z0).y - inset, 'left')
  const oxygen = `O₂ ${(100 * look.o2Upper).toFixed(0)} %`
  if (wide > 120) label(pen, palette, oxygen, right(b.z1).x - inset, top.y + 14 * pen.pixel, 'right')
  else if (tall > 60) label(pen, palette, oxygen, top.x + inset, top.y + 29 * pen.pixel, 'left')
}

/** Arrows for what flows through an opening, and its neutral plane. */
function drawFlow(pen: Pen, view: View, palette: Palette, place: Place, frame: FrameLook): void {
  const look = frame.openings[place.index]
  const facing = facingOf(view, place)
  if (!look || (facing && hidden(facing))) return
  const p = turn(view, place.x0, place.y0)
  const q = turn(view, place.x1, place.y1)
  const a0 = Math.min(p.along, q.along)
  const a1 = Math.max(p.along, q.along)
  const depth = sectionDepth(view, place)
  const at = (a: number, z: number) => project(view, a, z, depth)
  const inC = inflowC(view, place, frame)
  const gap = (z0: number, z1: number) => {
    pen.ctx.save()
    pen.ctx.globalAlpha *= look.open > 0.02 ? 1 : 0.25
    line(pen, at(a0, z0), at(a1, z1), palette.air, 5)
    pen.ctx.restore()
  }
  if (place.z0 === place.z1) {
    gap(place.z0, place.z0)
    const middle = at((a0 + a1) / 2, place.z0)
    flowArrow(pen, palette, middle, { x: 0, y: upward(place, view) }, look.outKgS, look.outTempC)
    flowArrow(pen, palette, { x: middle.x + 9 * pen.pixel, y: middle.y }, { x: 0, y: -upward(place, view) }, look.inKgS, inC)
    return
  }
  const thin = edgeOn(view, place)
  const share = Number.isFinite(look.neutralPlane) ? look.neutralPlane : 0.5
  const z = place.z0 + share * (place.z1 - place.z0)
  if (thin) gap(place.z0, place.z1)
  else stroke(pen, [at(a0, place.z1), at(a1, place.z1), at(a1, place.z0), at(a0, place.z0)], palette.cut, 1.4)
  const toward = thin ? { x: outward(view, place), y: 0 } : { x: -0.75, y: 0.3 }
  const x = (a0 + a1) / 2
  flowArrow(pen, palette, at(x, (z + place.z1) / 2), toward, look.outKgS, look.outTempC)
  flowArrow(pen, palette, at(x, (z + place.z0) / 2), { x: -toward.x, y: -toward.y }, look.inKgS, inC)
  if (look.flow === 3 && look.open > 0.02) {
    const reach = thin ? 0.06 * view.heightM : 0.02 * view.heightM
    pen.ctx.setLineDash([4 * pen.pixel, 3 * pen.pixel])
    const l = at(a0, z)
    const r = at(a1, z)
    line(pen, { x: l.x - reach, y: l.y }, { x: r.x + reach, y: r.y }, palette.mark, 1.6)
    pen.ctx.setLineDash([])
  }
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
