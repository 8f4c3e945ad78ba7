import type { FrameLook } from '../frame'
import type { Facing } from '../jet'
import type { Place } from '../layout'
import { corners, type Point, type View } from '../view'
import type { Palette } from './palette'
import { between, fill, line, stroke, type Pen } from './pen'

/** An opening in a wall or roof: the dark behind it, what burns in sight, its frame, and how far it stands open. */
export function drawOpening(
  pen: Pen, view: View, palette: Palette, place: Place, facing: Facing, frame: FrameLook,
): void {
  const [tl, tr, br, bl] = corners(view, place)
  const open = Math.max(0, Math.min(1, frame.openings[place.index]?.open ?? place.opening.open ?? 0))
  if (place.opening.kind === 'leak') {
    fill(pen, [tl, tr, br, bl], palette.insideDeep)
    return
  }
  const deep = pen.ctx.createLinearGradient(0, tl.y, 0, bl.y)
  deep.addColorStop(0, palette.insideDeep) // daylight falls in on the floor, never on the ceiling
  deep.addColorStop(0.35, palette.insideDeep)
  deep.addColorStop(1, palette.inside)
  fill(pen, [tl, tr, br, bl], deep)
  const shut = 1 - open
  if (shut > 0.005) leaf(pen, palette, place, [tl, between(tl, tr, shut), between(bl, br, shut), bl])
  if (open > 0.02 && facing === 'eye') swung(pen, palette, place, tl, bl, open * (tr.x - tl.x))
  stroke(pen, [tl, tr, br, bl], palette.line, place.opening.kind === 'window' ? 2.4 : 1.6)
}

/** The part of the opening that its panel covers. */
function leaf(pen: Pen, palette: Palette, place: Place, quad: [Point, Point, Point, Point]): void {
  const pane = place.opening.kind === 'window'
  fill(pen, quad, pane ? palette.glass : palette.leaf)
  stroke(pen, quad, palette.line, 0.8)
  const [tl, tr, br, bl] = quad
  if (pane) {
    line(pen, between(tl, tr, 0.5), between(bl, br, 0.5), palette.line, 0.8)
    line(pen, between(tl, bl, 0.5), between(tr, br, 0.5), palette.line, 0.8)
    return
  }
  const { ctx, pixel } = pen
  const knob = between(between(tl, bl, 0.5), between(tr, br, 0.5), 0.82)
  if (Math.abs(tr.x - tl.x) < 8 * pixel) return
  ctx.beginPath()
  ctx.arc(knob.x, knob.y, 2 * pixel, 0, 2 * Math.PI)
  ctx.fillStyle = palette.line
  ctx.fill()
}

/** A panel swung aside shows its edge beside the frame. */
function swung(pen: Pen, palette: Palette, place: Place, tl: Point, bl: Point, width: number): void {
  const out = Math.min(0.28 * width, 0.5)
  const drop = 0.22 * out
  const quad = [tl, { x: tl.x - out, y: tl.y + drop }, { x: bl.x - out, y: bl.y + drop }, bl]
  fill(pen, quad, place.opening.kind === 'window' ? palette.glass : palette.leaf)
  stroke(pen, quad, palette.line, 0.8)
}

/** Marks the opening that is looked at: corner brackets just outside its frame. */
export function drawMark(pen: Pen, view: View, palette: Palette, place: Place, inSection: boolean): void {
  const points = corners(view, place, inSection)
  const gap = 5 * pen.pixel
  const x0 = Math.min(...points.map((p) => p.x)) - gap
  const x1 = Math.max(...points.map((p) => p.x)) + gap
  const y0 = Math.min(...points.map((p) => p.y)) - gap
  const y1 = Math.max(...points.map((p) => p.y)) + gap
  const arm = Math.min(9 * pen.pixel, (x1 - x0) / 3)
  for (const [x, y, dx, dy] of [[x0, y0, 1, 1], [x1, y0, -1, 1], [x1, y1, -1, -1], [x0, y1, 1, -1]] as const) {
    line(pen, { x, y }, { x: x + dx * arm, y }, palette.mark, 2.2)
    line(pen, { x, y }, { x, y: y + dy * arm }, palette.mark, 2.2)
  }
}
