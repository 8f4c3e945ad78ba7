import type { FrameLook } from '../frame'
import type { Facing } from '../jet'
import type { Place } from '../layout'
import { corners, type Point, type Quad, type View } from '../view'
import type { Palette } from './palette'
import { between, fill, line, stroke, type Pen } from './pen'
import { drawBroken, drawPane } from './pane'

/** An opening in a wall or roof: the dark behind it, its panel or pane, its frame, and how far it stands open. */
export function drawOpening(
  pen: Pen, view: View, palette: Palette, place: Place, facing: Facing, frame: FrameLook,
): void {
  const [tl, tr, br, bl] = corners(view, place)
  const quad: Quad = [tl, tr, br, bl]
  const { kind } = place.opening
  const open = Math.max(0, Math.min(1, frame.openings[place.index]?.open ?? place.opening.open ?? 0))
  if (kind === 'leak') {
    fill(pen, quad, palette.insideDeep)
    louvres(pen, palette, quad)
    return
  }
  const house = view.layout.top > 2.2 && (facing === 'eye' || facing === 'right')
  if (house) trim(pen, palette, quad, kind === 'window')
  fill(pen, quad, darkness(pen, palette, quad))
  const shut = 1 - open
  if (shut > 0.005) {
    const panel: Quad = [tl, between(tl, tr, shut), between(bl, br, shut), bl]
    if (kind === 'window') drawPane(pen, view, palette, place, panel, frame)
    else leaf(pen, palette, place, panel, facing)
  }
  const broken = kind === 'window' && shut <= 0.005 && drawBroken(pen, view, palette, place, quad, frame)
  if (open > 0.02 && facing === 'eye' && !broken) swung(pen, palette, place, tl, bl, open * (tr.x - tl.x))
  stroke(pen, quad, palette.line, kind === 'window' ? 1.6 : 1.4)
}

/** Daylight falls in on the floor, never on the ceiling. */
function darkness({ ctx }: Pen, palette: Palette, [tl, , , bl]: Quad): CanvasGradient {
  const deep = ctx.createLinearGradient(0, tl.y, 0, bl.y)
  deep.addColorStop(0, palette.insideDeep)
  deep.addColorStop(0.35, palette.insideDeep)
  deep.addColorStop(1, palette.inside)
  return deep
}

const TRIM_M = 0.09

/** Boards round a door or a window, and under a window its sill. */
function trim(pen: Pen, palette: Palette, [tl, tr, br, bl]: Quad, sill: boolean): void {
  const out = (p: Point, dx: number, dy: number): Point => ({ x: p.x + dx * TRIM_M, y: p.y + dy * TRIM_M })
  const below = sill ? 1 : 0
  const around: Quad = [out(tl, -1, -1.2), out(tr, 1, -1.2), out(br, 1, below), out(bl, -1, below)]
  fill(pen, around, palette.trim)
  stroke(pen, around, palette.line, 0.6)
  if (sill) {
    const ledge: Quad = [out(bl, -1.8, 0.7), out(br, 1.8, 0.7), out(br, 1.8, 1.5), out(bl, -1.8, 1.5)]
    fill(pen, ledge, palette.trim)
    stroke(pen, ledge, palette.line, 0.6)
  }
}

/** The slats of a vent. */
function louvres(pen: Pen, palette: Palette, [tl, tr, br, bl]: Quad): void {
  for (let k = 1; k < 5; k++) line(pen, between(tl, bl, k / 5), between(tr, br, k / 5), palette.trim, 1)
  stroke(pen, [tl, tr, br, bl], palette.trim, 1.6)
}

/** The part of the opening that its panel covers: a board with a knob, or a door of two fields. */
function leaf(pen: Pen, palette: Palette, place: Place, quad: Quad, facing: Facing): void {
  fill(pen, quad, palette.leaf)
  stroke(pen, quad, palette.line, 0.8)
  const [tl, tr, br, bl] = quad
  if (Math.abs(tr.x - tl.x) < 10 * pen.pixel || facing === 'up') return
  if (place.opening.kind === 'door') {
    for (const [from, to] of [[0.09, 0.5], [0.57, 0.92]] as const) {
      const field = (u: number, v: number) => between(between(tl, tr, u), between(bl, br, u), v)
      stroke(pen, [field(0.16, from), field(0.84, from), field(0.84, to), field(0.16, to)], palette.line, 0.6)
    }
  }
  const { ctx, pixel } = pen
  const knob = between(between(tl, tr, 0.9), between(bl, br, 0.9), 0.53)
  ctx.beginPath()
  ctx.arc(knob.x, knob.y, 1.8 * pixel, 0, 2 * Math.PI)
  ctx.fillStyle = palette.line
  ctx.fill()
}

/** A panel swung aside shows its face, narrow, beside the frame. */
function swung(pen: Pen, palette: Palette, place: Place, tl: Point, bl: Point, width: number): void {
  const out = Math.min(0.28 * width, 0.5)
  const drop = 0.22 * out
  const quad: Quad = [{ x: tl.x - out, y: tl.y + drop }, tl, bl, { x: bl.x - out, y: bl.y + drop }]
  const pane = place.opening.kind === 'window'
  fill(pen, quad, pane ? palette.glass : palette.leaf)
  stroke(pen, quad, palette.line, 0.8)
  if (pane) line(pen, between(quad[0], quad[3], 0.5), between(tl, bl, 0.5), palette.trim, 0.8)
}

/** Marks the opening that is looked at: corner brackets just outside its frame. */
export function drawMark(pen: Pen, view: View, palette: Palette, place: Place, inSection: boolean): void {
  const points = corners(view, place, inSection)
  const gap = 6 * pen.pixel
  const x0 = Math.min(...points.map((p) => p.x)) - gap
  const x1 = Math.max(...points.map((p) => p.x)) + gap
  const y0 = Math.min(...points.map((p) => p.y)) - gap
  const y1 = Math.max(...points.map((p) => p.y)) + gap
  const arm = Math.min(10 * pen.pixel, (x1 - x0) / 3)
  for (const [x, y, dx, dy] of [[x0, y0, 1, 1], [x1, y0, -1, 1], [x1, y1, -1, -1], [x0, y1, 1, -1]] as const) {
    line(pen, { x, y }, { x: x + dx * arm, y }, palette.mark, 2.2)
    line(pen, { x, y }, { x, y: y + dy * arm }, palette.mark, 2.2)
  }
}
