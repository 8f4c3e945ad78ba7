import type { FrameLook } from '../frame'
import { glassOf } from '../glass'
import type { Place } from '../layout'
import { random } from '../noise'
import { opacity, smokeColour } from '../tone'
import type { Quad, View } from '../view'
import type { Palette } from './palette'
import { between, fill, line, outline, stroke, type Pen } from './pen'

// A window pane: what stands behind it, the sky in it, the film on it, the
// cracks in it, and its bars.

export function drawPane(pen: Pen, view: View, palette: Palette, place: Place, quad: Quad, frame: FrameLook): void {
  const [tl, tr, br, bl] = quad
  const { ctx } = pen
  const glass = glassOf(view, place, frame)
  ctx.save()
  outline(pen, quad)
  ctx.clip()
  fill(pen, quad, palette.glass)
  const height = place.z1 - place.z0
  const share = Math.max(0, Math.min(1, (place.z1 - glass.layerM) / height))
  if (share > 0 && glass.depth > 0.05) {
    const layer: Quad = [tl, tr, between(tr, br, share), between(tl, bl, share)]
    fill(pen, layer, smokeColour(palette.smoke, glass.lightness, glass.tint, 0.8 * opacity(glass.depth)))
  }
  const shine = ctx.createLinearGradient(tl.x, tl.y, br.x, br.y)
  const dull = 1 - 0.85 * opacity(glass.film)
  ctx.globalAlpha *= dull
  shine.addColorStop(0, palette.shine[0])
  shine.addColorStop(0.55, palette.shine[1])
  shine.addColorStop(1, palette.shine[0])
  fill(pen, quad, shine)
  ctx.globalAlpha /= dull
  if (glass.film > 0.05) stain(pen, palette, quad, glass.film)
  if (glass.crazed) craze(pen, palette, place, quad)
  ctx.restore()
  line(pen, between(tl, tr, 0.5), between(bl, br, 0.5), palette.trim, 1.6)
  line(pen, between(tl, bl, 0.5), between(tr, br, 0.5), palette.trim, 1.6)
  stroke(pen, quad, palette.line, 0.8)
}

/** Soot and tar on the pane: brown-black, heaviest at the top, where the smoke stood longest. */
function stain(pen: Pen, { smoke }: Palette, quad: Quad, film: number): void {
  const [tl, , , bl] = quad
  const run = pen.ctx.createLinearGradient(0, tl.y, 0, bl.y)
  run.addColorStop(0, smokeColour(smoke, 0.06, 0.7, opacity(1.3 * film)))
  run.addColorStop(0.6, smokeColour(smoke, 0.07, 0.75, opacity(0.8 * film)))
  run.addColorStop(1, smokeColour(smoke, 0.09, 0.8, opacity(0.45 * film)))
  fill(pen, quad, run)
}

const CRACKS = 9

/** Fine cracks that run in from the edges and fork, the same for the same window every time. */
function craze(pen: Pen, palette: Palette, place: Place, quad: Quad): void {
  const [tl, tr, br, bl] = quad
  const next = random(101 + place.index)
  const at = (u: number, v: number) => between(between(tl, tr, u), between(bl, br, u), v)
  for (let k = 0; k < CRACKS; k++) {
    const side = k % 4
    let u = side === 0 ? 0 : side === 1 ? 1 : next()
    let v = side === 2 ? 0 : side === 3 ? 1 : next()
    let way = Math.atan2(0.5 - v, 0.5 - u) + 0.9 * (next() - 0.5)
    for (let n = 0; n < 5; n++) {
      const length = 0.07 + 0.09 * next()
      const [nu, nv] = [u + length * Math.cos(way), v + length * Math.sin(way)]
      line(pen, at(u, v), at(nu, nv), palette.shine[0], 1)
      u = nu
      v = nv
      way += 1.1 * (next() - 0.5)
    }
  }
}

/** A window that stands open before a room hot enough to have broken it: what is left of the pane along its frame. Returns whether it is. */
export function drawBroken(pen: Pen, view: View, palette: Palette, place: Place, quad: Quad, frame: FrameLook): boolean {
  if (!glassOf(view, place, frame).crazed) return false
  const [tl, tr, br, bl] = quad
  const next = random(211 + place.index)
  const at = (u: number, v: number) => between(between(tl, tr, u), between(bl, br, u), v)
  const teeth = 11
  for (const bottom of [true, false]) {
    const points = [at(0, bottom ? 1 : 0)]
    for (let k = 0; k <= teeth; k++) {
      const deep = (k % 2 === 0 ? 0.02 : 0.05 + 0.11 * next()) * (bottom ? 1 : 0.6)
      points.push(at(k / teeth, bottom ? 1 - deep : deep))
    }
    points.push(at(1, bottom ? 1 : 0))
    fill(pen, points, palette.glass)
    stroke(pen, points, palette.shine[0], 0.6)
  }
  return true
}
