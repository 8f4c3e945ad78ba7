import type { FrameLook } from '../frame'
import { blocks, facingOf, project, type Block, type Point, type View } from '../view'
import { drawOpening } from './openings'
import type { Faces, Palette } from './palette'
import { between, fill, line, stroke, type Pen } from './pen'

/** A building under this height is the small box: boards and screws, not siding. Chosen by us. */
const BOX_TOP_M = 2.2

/** Draws the walls, roof and openings of the side that is looked at. */
export function drawBuilding(pen: Pen, view: View, palette: Palette, frame: FrameLook): void {
  const small = view.layout.top < BOX_TOP_M
  const all = blocks(view)
  shadow(pen, view, all)
  for (const block of all) {
    if (block.box.attic && !small) drawGable(pen, view, palette, block)
    else drawBlock(pen, view, palette, block, all, small)
  }
  if (!small) for (const block of all) if (bare(block, all)) drawSlab(pen, view, palette, block)
  for (const place of view.layout.places) {
    const facing = facingOf(view, place)
    if (facing === 'eye' || facing === 'right' || facing === 'up') drawOpening(pen, view, palette, place, facing, frame)
  }
}

/** What the building shades on the ground, so that it stands. */
function shadow({ ctx, pixel }: Pen, view: View, all: Block[]): void {
  const a0 = Math.min(...all.map((b) => b.a0))
  const a1 = Math.max(...all.map((b) => b.a1))
  const d1 = Math.max(...all.map((b) => b.d1))
  const left = project(view, a0, 0, 0)
  const right = project(view, a1, 0, d1)
  ctx.fillStyle = 'rgba(0,0,0,0.18)'
  ctx.beginPath()
  ctx.ellipse((left.x + right.x) / 2, left.y + pixel, (right.x - left.x) * 0.53, 6 * pixel, 0, 0, 2 * Math.PI)
  ctx.fill()
}

function drawBlock(pen: Pen, view: View, palette: Palette, b: Block, all: Block[], small: boolean): void {
  const faces = small ? palette.box : palette.house
  const at = (a: number, z: number, d: number) => project(view, a, z, d)
  const front = [at(b.a0, b.wallTop, b.d0), at(b.a1, b.wallTop, b.d0), at(b.a1, b.z0, b.d0), at(b.a0, b.z0, b.d0)] as const
  const side = [at(b.a1, b.wallTop, b.d0), at(b.a1, b.wallTop, b.d1), at(b.a1, b.z0, b.d1), at(b.a1, b.z0, b.d0)] as const
  const top = [at(b.a0, b.wallTop, b.d1), at(b.a1, b.wallTop, b.d1), at(b.a1, b.wallTop, b.d0), at(b.a0, b.wallTop, b.d0)] as const
  fill(pen, top, small ? faces.top : palette.roof.top)
  fill(pen, side, faces.side)
  fill(pen, front, faces.front)
  if (small) boards(pen, palette, front, side)
  else siding(pen, palette, front, side, b)
  edges(pen, palette, b, all, small, { front, side, top })
}

type Quad = readonly [Point, Point, Point, Point]

/** The box: upright grain of the boards and an inset line, as of a bolted panel. */
function boards(pen: Pen, palette: Palette, front: Quad, side: Quad): void {
  for (let k = 1; k < 16; k++) {
    const share = k / 16 + 0.012 * Math.sin(k * 12.9)
    line(pen, between(front[0], front[1], share), between(front[3], front[2], share), palette.grain, 0.8)
  }
  for (let k = 1; k < 5; k++) line(pen, between(side[0], side[1], k / 5), between(side[3], side[2], k / 5), palette.grain, 0.8)
}

/** A house: horizontal boards 0.2 m apart. */
function siding(pen: Pen, palette: Palette, front: Quad, side: Quad, b: Block): void {
  const courses = Math.round((b.wallTop - b.z0) / 0.2)
  for (let k = 1; k < courses; k++) {
    const share = k / courses
    line(pen, between(front[0], front[3], share), between(front[1], front[2], share), palette.grain)
    line(pen, between(side[0], side[3], share), between(side[1], side[2], share), palette.grain)
  }
}

const touches = (p: number, q: number) => Math.abs(p - q) < 0.02

/** Draws the outer edges in full and the joints between compartments only on the box. */
function edges(
  pen: Pen, palette: Palette, b: Block, all: Block[], small: boolean,
  quads: { front: Quad; side: Quad; top: Quad },
): void {
  if (small) {
    stroke(pen, quads.top, palette.line, 0.8)
    stroke(pen, quads.side, palette.line, 0.8)
    stroke(pen, quads.front, palette.line, 1)
    return
  }
  const level = all.filter((o) => o !== b && touches(o.d0, b.d0))
  const overlapsUp = (o: Block) => o.z0 < b.wallTop - 0.05 && o.wallTop > b.z0 + 0.05
  const overlapsAlong = (o: Block) => o.a0 < b.a1 - 0.05 && o.a1 > b.a0 + 0.05
  const [tl, tr, br, bl] = quads.front
  if (!level.some((o) => touches(o.a1, b.a0) && overlapsUp(o))) line(pen, tl, bl, palette.line)
  if (!level.some((o) => touches(o.a0, b.a1) && overlapsUp(o))) line(pen, tr, br, palette.line)
  const above = level.some((o) => touches(o.z0, b.wallTop) && overlapsAlong(o))
  line(pen, tl, tr, above ? palette.grain : palette.line, above ? 2.5 : 1)
  const below = level.some((o) => touches(o.wallTop, b.z0) && overlapsAlong(o))
  if (!below) line(pen, bl, br, palette.line)
  const joined = all.some((o) => o !== b && touches(o.a1, b.a1) && touches(o.d0, b.d1) && overlapsUp(o))
  if (!joined) line(pen, quads.side[1], quads.side[2], palette.line)
  if (!above) line(pen, quads.side[0], quads.side[1], palette.line)
}

// An attic is a box of its mean height to the physics; drawn as a gable it has
// the same volume when its ridge is twice as high. Eaves stand out by 0.35 m,
// common practice (no source).
const EAVES_M = 0.35

/** A pitched roof with its ridge along the wall that is looked at, or across it. */
function drawGable(pen: Pen, view: View, palette: Palette, b: Block): void {
  const ridge = b.z0 + 2 * (b.z1 - b.z0)
  const faces: Faces = palette.roof
  const along = view.side === 'A' || view.side === 'C'
  const at = (a: number, z: number, d: number) => project(view, a, z, d)
  if (along) {
    const mid = (b.d0 + b.d1) / 2
    const slope = [at(b.a0 - EAVES_M, ridge, mid), at(b.a1 + EAVES_M, ridge, mid),
      at(b.a1 + EAVES_M, b.z0, b.d0 - EAVES_M), at(b.a0 - EAVES_M, b.z0, b.d0 - EAVES_M)] as const
    const gable = [at(b.a1, ridge, mid), at(b.a1, b.z0, b.d1), at(b.a1, b.z0, b.d0)]
    fill(pen, gable, palette.house.side)
    stroke(pen, gable, palette.line, 0.8)
    fill(pen, slope, faces.front)
    tiles(pen, palette, slope)
    stroke(pen, slope, palette.line)
    return
  }
  const mid = (b.a0 + b.a1) / 2
  const gable = [at(b.a0, b.z0, b.d0), at(mid, ridge, b.d0), at(b.a1, b.z0, b.d0)]
  const slope = [at(mid, ridge, b.d0 - EAVES_M), at(mid, ridge, b.d1), at(b.a1 + EAVES_M, b.z0, b.d1),
    at(b.a1 + EAVES_M, b.z0, b.d0 - EAVES_M)] as const
  fill(pen, gable, palette.house.front)
  stroke(pen, gable, palette.line, 0.8)
  fill(pen, slope, faces.side)
  tiles(pen, palette, slope)
  stroke(pen, slope, palette.line)
  line(pen, at(b.a0 - EAVES_M, b.z0, b.d0 - EAVES_M), at(mid, ridge, b.d0 - EAVES_M), palette.line, 2.5)
}

// A flat roof: a slab that stands out a little over the wall. Chosen by us.
const SLAB_M = 0.22
const OVERHANG_M = 0.25

/** Whether nothing stands on a block: no attic and no further storey. */
const bare = (b: Block, all: Block[]) => !b.box.attic &&
  !all.some((o) => o.z0 > b.z0 && Math.abs(o.z0 - b.wallTop) < 0.05 && o.a0 < b.a1 - 0.05 && o.a1 > b.a0 + 0.05)

function drawSlab(pen: Pen, view: View, palette: Palette, b: Block): void {
  const at = (a: number, z: number, d: number) => project(view, a, z, d)
  const [a0, a1, d0, d1] = [b.a0 - OVERHANG_M, b.a1 + OVERHANG_M, b.d0 - OVERHANG_M, b.d1 + OVERHANG_M]
  const [z0, z1] = [b.wallTop, b.wallTop + SLAB_M]
  const faces: [readonly Point[], string][] = [
    [[at(a0, z1, d1), at(a1, z1, d1), at(a1, z1, d0), at(a0, z1, d0)], palette.roof.top],
    [[at(a1, z1, d0), at(a1, z1, d1), at(a1, z0, d1), at(a1, z0, d0)], palette.roof.side],
    [[at(a0, z1, d0), at(a1, z1, d0), at(a1, z0, d0), at(a0, z0, d0)], palette.roof.front],
  ]
  for (const [points, colour] of faces) fill(pen, points, colour)
}

function tiles(pen: Pen, palette: Palette, slope: Quad): void {
  for (let k = 1; k < 12; k++) line(pen, between(slope[0], slope[3], k / 12), between(slope[1], slope[2], k / 12), palette.grain)
}
