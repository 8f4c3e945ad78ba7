import type { CompartmentLook, FrameLook } from '../frame'
import { blocks, project, type Block, type View } from '../view'
import { drawFire } from './flame'
import { scene as words } from '../../words/scene'
import { drawFigures, FIGURE, type Cut } from './figures'
import { Notes, type Spot } from './notes'
import { drawFlow, edgeOn, type Line } from './section-flow'
import type { Palette } from './palette'
import { fill, line, stroke, type Pen } from './pen'

// The wall drawn away: a section just behind it, in the same place on the
// picture. Each compartment shows its two layers, its temperatures and oxygen,
// and where it burns; each opening its flow and its neutral plane.

export function drawCutaway(pen: Pen, view: View, palette: Palette, frame: FrameLook, cut: Cut, time: number): void {
  if (cut.faded <= 0) return
  const { ctx } = pen
  ctx.save()
  ctx.globalAlpha = cut.faded
  const shown = blocks(view).filter((block, _, all) => nearest(block, all))
  const lookOf = ({ box }: Block) => frame.compartments[view.layout.boxes.indexOf(box)]
  for (const block of shown) {
    const look = lookOf(block)
    if (look) drawCompartment(pen, view, palette, block, look, cut, time)
  }
  const notes = new Notes(pen, palette)
  const planes = drawFlows(pen, view, palette, frame, cut, new Set(shown.map(({ box }) => box.id)), notes)
  ctx.globalAlpha = cut.faded
  for (const block of shown) {
    const look = lookOf(block)
    if (look) drawFigures(pen, view, notes, block, look, cut)
  }
  planes.some((plane) => namePlane(pen, notes, plane, cut))
  ctx.restore()
}

/** What flows through the openings of the section; the neutral planes of those to the outside. */
function drawFlows(
  pen: Pen, view: View, palette: Palette, frame: FrameLook, cut: Cut, inSection: ReadonlySet<string>, notes: Notes,
): Line[] {
  const planes: Line[] = []
  for (const place of view.layout.places) {
    const joins = [place.opening.from, place.opening.to].filter((id) => inSection.has(id)).length
    if (joins === 0) continue
    const toRoomBehind = joins === 1 && place.opening.to !== 'outside'
    if (toRoomBehind && edgeOn(view, place)) continue // in another wall, farther in
    pen.ctx.globalAlpha = cut.faded * (toRoomBehind ? 0.45 : 1)
    const plane = drawFlow(pen, view, palette, place, frame, notes)
    if (plane && place.opening.to === 'outside') planes.push(plane)
  }
  return planes
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
  if (look.hrrKW > 0.2) drawFire(pen, view, b, b.d0, look.hrrKW, time, betweenFigures(pen, b))
  stroke(pen, quad(b.z0, b.z1), palette.cut, 3)
}

/** The breadth that the figures at both sides of a compartment leave to its flame, and never less than a fifth of it. */
function betweenFigures({ pixel }: Pen, { a0, a1 }: Block): number {
  return Math.max(0.2 * (a1 - a0), 0.85 * (a1 - a0 - 2 * FIGURE * pixel))
}

/** Temperature as depth of colour: air is paper, warm gas ochre, hot gas ember. Never green. */
function heatColour({ warm, hot }: Palette, gasC: number, outsideC: number, strength: number): string {
  const rise = Math.max(0, gasC - outsideC)
  const full = Math.min(1, rise / 600) // 600 C of rise is the deepest colour: the usual flashover layer, chosen by us
  const mix = warm.map((w, k) => Math.round(w + (hot[k]! - w) * full))
  const alpha = strength * Math.min(0.95, rise / 60)
  return `rgba(${mix[0]},${mix[1]},${mix[2]},${alpha.toFixed(3)})`
}

/** Writes what a dashed line is: beyond its right end or its left, where there is room; says whether it did. */
function namePlane({ pixel }: Pen, notes: Notes, { left, right }: Line, { leftM, rightM }: Cut): boolean {
  const room = 96 * pixel
  const foot = right.y + 4 * pixel
  const spots: Spot[] = []
  if (right.x + room < rightM) spots.push({ x: right.x + 7 * pixel, y: foot, align: 'left' })
  if (left.x - room > leftM) spots.push({ x: left.x - 7 * pixel, y: foot, align: 'right' })
  return notes.write(words.plane, spots)
}
