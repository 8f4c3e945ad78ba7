import type { FrameLook, OpeningLook } from '../frame'
import { corners, facingOf, type Point, type View } from '../view'
import type { Palette } from './palette'
import type { Pen } from './pen'

// In stills nothing can be seen to move. Beside each opening that smokes an
// arrow then shows how far the smoke goes in a quarter of a second, at the scale
// of the picture; a bar across its foot is where it starts. The words of the
// scene say so (words/en/scene.ts, arrows).

/** Time that an arrow stands for: so that drifting and driven smoke both fit beside an opening. Chosen by us. */
const ARROW_S = 0.25

const GAP = 9 // screen pixels beside the frame

export function drawPaces(pen: Pen, view: View, palette: Palette, frame: FrameLook): void {
  for (const place of view.layout.places) {
    const look = frame.openings[place.index]
    const facing = facingOf(view, place)
    if (!look || !smokes(look) || (facing !== 'eye' && facing !== 'right' && facing !== 'up')) continue
    const [tl, tr, br] = corners(view, place)
    const level = place.z0 === place.z1
    const share = level || !Number.isFinite(look.neutralPlane) ? 0 : Math.max(0, Math.min(1, look.neutralPlane))
    const top = Math.min(tl.y, tr.y)
    const foot = { x: Math.max(tr.x, br.x) + GAP * pen.pixel, y: top + (level ? 0 : (1 - share) * (br.y - tr.y)) }
    arrow(pen, palette, foot, look.outVelocityMS * ARROW_S)
  }
}

const smokes = (look: OpeningLook) => look.opticalDepth > 0.02 && look.outVelocityMS > 0.005

function arrow({ ctx, pixel }: Pen, palette: Palette, { x, y }: Point, length: number): void {
  const tip = y - length
  const wing = Math.min(4.5 * pixel, 0.6 * length)
  ctx.beginPath()
  ctx.moveTo(x - 3.5 * pixel, y)
  ctx.lineTo(x + 3.5 * pixel, y)
  ctx.moveTo(x, y)
  ctx.lineTo(x, tip)
  ctx.moveTo(x - wing, tip + 1.5 * wing)
  ctx.lineTo(x, tip)
  ctx.lineTo(x + wing, tip + 1.5 * wing)
  ctx.lineCap = 'round'
  ctx.lineJoin = 'round'
  for (const [colour, wide] of [[palette.paper, 4.4], [palette.ink, 1.9]] as const) {
    ctx.strokeStyle = colour
    ctx.lineWidth = wide * pixel
    ctx.stroke()
  }
}
