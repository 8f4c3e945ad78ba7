import { EAVES_M, eavesOf, isBare, OVERHANG_M, roofStart } from '../eaves'
import { project, type Block, type Point, type Quad, type View } from '../view'
import type { Palette } from './palette'
import { between, fill, line, stroke, type Pen } from './pen'

// A house: boarded walls on a foot, corner boards, a pitched roof in courses or
// a flat slab, and the shade that its eaves cast.

const COURSE_M = 0.2 // breadth of a board of the wall
const CORNER_M = 0.1
const FOOT_M = 0.16

const touches = (p: number, q: number) => Math.abs(p - q) < 0.02

/** The walls of one room, as far as they stand free. */
export function drawHouseBlock(pen: Pen, view: View, palette: Palette, b: Block, all: Block[]): void {
  const at = (a: number, z: number, d: number) => project(view, a, z, d)
  const front: Quad = [at(b.a0, b.wallTop, b.d0), at(b.a1, b.wallTop, b.d0), at(b.a1, b.z0, b.d0), at(b.a0, b.z0, b.d0)]
  const side: Quad = [at(b.a1, b.wallTop, b.d0), at(b.a1, b.wallTop, b.d1), at(b.a1, b.z0, b.d1), at(b.a1, b.z0, b.d0)]
  fill(pen, side, palette.house.side)
  fill(pen, front, palette.house.front)
  siding(pen, palette, front, side, b)
  if (b.z0 < 0.05) {
    fill(pen, [at(b.a0, FOOT_M, b.d0), at(b.a1, FOOT_M, b.d0), front[2], front[3]], palette.foot)
    fill(pen, [at(b.a1, FOOT_M, b.d0), at(b.a1, FOOT_M, b.d1), side[2], side[3]], palette.foot)
  }
  edges(pen, view, palette, b, all)
}

function siding(pen: Pen, palette: Palette, front: Quad, side: Quad, b: Block): void {
  const courses = Math.round((b.wallTop - b.z0) / COURSE_M)
  for (let k = 1; k < courses; k++) {
    const share = k / courses
    line(pen, between(front[0], front[3], share), between(front[1], front[2], share), palette.grain)
    line(pen, between(side[0], side[3], share), between(side[1], side[2], share), palette.grain)
  }
}

/** Corner boards and outlines where a wall ends; a band between storeys. */
function edges(pen: Pen, view: View, palette: Palette, b: Block, all: Block[]): void {
  const at = (a: number, z: number, d = b.d0) => project(view, a, z, d)
  const level = all.filter((o) => o !== b && touches(o.d0, b.d0))
  const overlapsUp = (o: Block) => o.z0 < b.wallTop - 0.05 && o.wallTop > b.z0 + 0.05
  const overlapsAlong = (o: Block) => o.a0 < b.a1 - 0.05 && o.a1 > b.a0 + 0.05
  const corner = (a0: number, a1: number, edge: number) => {
    fill(pen, [at(a0, b.wallTop), at(a1, b.wallTop), at(a1, b.z0), at(a0, b.z0)], palette.trim)
    line(pen, at(edge, b.wallTop), at(edge, b.z0), palette.line)
  }
  if (!level.some((o) => touches(o.a1, b.a0) && overlapsUp(o))) corner(b.a0, b.a0 + CORNER_M, b.a0)
  if (!level.some((o) => touches(o.a0, b.a1) && overlapsUp(o))) corner(b.a1 - CORNER_M, b.a1, b.a1)
  const above = level.some((o) => touches(o.z0, b.wallTop) && overlapsAlong(o) && !o.box.attic)
  if (above) fill(pen, [at(b.a0, b.wallTop), at(b.a1, b.wallTop), at(b.a1, b.wallTop - 0.14), at(b.a0, b.wallTop - 0.14)], palette.trim)
  if (b.z0 < 0.05) line(pen, at(b.a0, b.z0), at(b.a1, b.z0), palette.line)
  const joined = all.some((o) => o !== b && touches(o.a1, b.a1) && touches(o.d0, b.d1) && overlapsUp(o))
  if (!joined) line(pen, at(b.a1, b.wallTop, b.d1), at(b.a1, b.z0, b.d1), palette.line)
}

/** The shade under each eave: deepest at the soffit, gone a metre below. */
export function underEaves({ ctx }: Pen, view: View, palette: Palette): void {
  for (const { x0, x1, y, outM } of eavesOf(view)) {
    const low = y + 2.6 * outM
    const fade = ctx.createLinearGradient(0, y - 0.1, 0, low)
    fade.addColorStop(0, palette.shade)
    fade.addColorStop(1, 'rgba(0,0,0,0)')
    ctx.fillStyle = fade
    ctx.fillRect(x0 + 1.26 * outM, y - 0.1, x1 - x0 - 2 * outM, low - y + 0.1)
  }
}

export function drawRoof(pen: Pen, view: View, palette: Palette, b: Block, all: Block[]): void {
  if (b.box.attic) drawGable(pen, view, palette, b)
  else if (isBare(b, all)) drawSlab(pen, view, palette, b, all)
}

// An attic is a box of its mean height to the physics; drawn as a gable it has
// the same volume when its ridge is twice as high.
const FASCIA_M = 0.17

/** A pitched roof with its ridge along the wall that is looked at, or across it. */
function drawGable(pen: Pen, view: View, palette: Palette, b: Block): void {
  const ridge = b.z0 + 2 * (b.z1 - b.z0)
  const at = (a: number, z: number, d: number) => project(view, a, z, d)
  const near = b.d0 - EAVES_M
  if (view.side === 'A' || view.side === 'C') {
    const mid = (b.d0 + b.d1) / 2
    const gable = [at(b.a1, ridge, mid), at(b.a1, b.z0, b.d1), at(b.a1, b.z0, b.d0)]
    fill(pen, gable, palette.house.side)
    stroke(pen, gable, palette.line, 0.8)
    const slope: Quad = [at(b.a0 - EAVES_M, ridge, mid), at(b.a1 + EAVES_M, ridge, mid), at(b.a1 + EAVES_M, b.z0, near), at(b.a0 - EAVES_M, b.z0, near)]
    cover(pen, palette, slope, palette.roof.front)
    const [, , br, bl] = slope
    board(pen, palette, [bl, br, { x: br.x, y: br.y + FASCIA_M }, { x: bl.x, y: bl.y + FASCIA_M }])
    return
  }
  const mid = (b.a0 + b.a1) / 2
  const gable = [at(b.a0, b.z0, b.d0), at(mid, ridge, b.d0), at(b.a1, b.z0, b.d0)]
  fill(pen, gable, palette.house.front)
  boards(pen, palette, gable as [Point, Point, Point])
  cover(pen, palette, [at(mid, ridge, near), at(mid, ridge, b.d1), at(b.a1 + EAVES_M, b.z0, b.d1), at(b.a1 + EAVES_M, b.z0, near)], palette.roof.side)
  for (const foot of [at(b.a0 - EAVES_M, b.z0, near), at(b.a1 + EAVES_M, b.z0, near)]) {
    const top = at(mid, ridge, near)
    board(pen, palette, [foot, top, { x: top.x, y: top.y + FASCIA_M }, { x: foot.x, y: foot.y + FASCIA_M }])
  }
}

/** The boards of a gable, shorter toward its top. */
function boards(pen: Pen, palette: Palette, [left, top, right]: [Point, Point, Point]): void {
  const courses = Math.round((left.y - top.y) / COURSE_M)
  for (let k = 1; k < courses; k++) line(pen, between(left, top, k / courses), between(right, top, k / courses), palette.grain)
}

function board(pen: Pen, palette: Palette, quad: Quad): void {
  fill(pen, quad, palette.trim)
  stroke(pen, quad, palette.line, 0.7)
}

/** A slope in courses, the joints of each shifted against those of the next. */
function cover(pen: Pen, palette: Palette, slope: Quad, colour: string): void {
  fill(pen, slope, colour)
  const [tl, tr, br, bl] = slope
  const rows = 14
  const joints = 26
  for (let k = 1; k <= rows; k++) {
    const [l0, r0] = [between(tl, bl, (k - 1) / rows), between(tr, br, (k - 1) / rows)]
    const [l1, r1] = [between(tl, bl, k / rows), between(tr, br, k / rows)]
    line(pen, l1, r1, palette.grain)
    for (let n = 1; n < joints; n++) {
      const share = (n + 0.5 * (k % 2) + 0.16 * Math.sin(5.1 * n + 2.7 * k)) / joints
      line(pen, between(l0, r0, share), between(l1, r1, share), palette.grain, 0.6)
    }
  }
  stroke(pen, slope, palette.line)
}

const SLAB_M = 0.22

/** A flat roof: a slab that stands out a little over the wall; its edge is one board as far as the roof goes on. */
function drawSlab(pen: Pen, view: View, palette: Palette, b: Block, all: Block[]): void {
  const at = (a: number, z: number, d: number) => project(view, a, z, d)
  const [a0, a1, d0, d1] = [b.a0 - OVERHANG_M, b.a1 + OVERHANG_M, b.d0 - OVERHANG_M, b.d1 + OVERHANG_M]
  const [z0, z1] = [b.wallTop, b.wallTop + SLAB_M]
  fill(pen, [at(a0, z1, d1), at(a1, z1, d1), at(a1, z1, d0), at(a0, z1, d0)], palette.roof.top)
  const start = roofStart(b, all)
  if (start === undefined) return
  fill(pen, [at(a1, z1, d0), at(a1, z1, d1), at(a1, z0, d1), at(a1, z0, d0)], palette.roof.side)
  const left = start - OVERHANG_M
  board(pen, palette, [at(left, z1, d0), at(a1, z1, d0), at(a1, z0, d0), at(left, z0, d0)])
}
