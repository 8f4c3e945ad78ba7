import { project, type Block, type Quad, type View } from '../view'
import type { Palette } from './palette'
import { between, fill, line, stroke, type Pen } from './pen'

// The small box: panels of board with upright grain, screwed together.

export function drawCrate(pen: Pen, view: View, palette: Palette, b: Block): void {
  const at = (a: number, z: number, d: number) => project(view, a, z, d)
  const front: Quad = [at(b.a0, b.wallTop, b.d0), at(b.a1, b.wallTop, b.d0), at(b.a1, b.z0, b.d0), at(b.a0, b.z0, b.d0)]
  const side: Quad = [at(b.a1, b.wallTop, b.d0), at(b.a1, b.wallTop, b.d1), at(b.a1, b.z0, b.d1), at(b.a1, b.z0, b.d0)]
  const top: Quad = [at(b.a0, b.wallTop, b.d1), at(b.a1, b.wallTop, b.d1), at(b.a1, b.wallTop, b.d0), at(b.a0, b.wallTop, b.d0)]
  fill(pen, top, palette.box.top)
  fill(pen, side, palette.box.side)
  fill(pen, front, palette.box.front)
  grain(pen, palette, front, b)
  for (let k = 1; k < 6; k++) line(pen, between(side[0], side[1], k / 6), between(side[3], side[2], k / 6), palette.grain, 0.8)
  stroke(pen, top, palette.line, 0.8)
  stroke(pen, side, palette.line, 0.8)
  stroke(pen, front, palette.line, 1)
  screws(pen, view, palette, b)
}

/** Long, slightly uneven lines of grain; lower panels in their own pattern. */
function grain(pen: Pen, palette: Palette, [tl, tr, br, bl]: Quad, b: Block): void {
  const lines = Math.max(6, Math.round((b.a1 - b.a0) / 0.035))
  for (let k = 1; k < lines; k++) {
    const share = (k + 0.34 * Math.sin(k * 12.9 + 7 * b.a0 + 3 * b.z0)) / lines
    line(pen, between(tl, tr, share), between(bl, br, share), palette.grain, k % 3 === 0 ? 1 : 0.5)
  }
}

const SCREW_M = 0.006
const INSET_M = 0.028

/** Two screws near every corner of a panel. */
function screws({ ctx, pixel }: Pen, view: View, palette: Palette, b: Block): void {
  if (b.wallTop - b.z0 < 4 * INSET_M) return
  ctx.fillStyle = palette.line
  ctx.globalAlpha *= 0.55
  for (const a of [b.a0 + INSET_M, b.a1 - INSET_M]) {
    for (const z of [b.z0 + INSET_M, b.wallTop - INSET_M]) {
      const { x, y } = project(view, a, z, b.d0)
      ctx.beginPath()
      ctx.arc(x, y, Math.max(SCREW_M, 0.9 * pixel), 0, 2 * Math.PI)
      ctx.fill()
    }
  }
  ctx.globalAlpha /= 0.55
}
