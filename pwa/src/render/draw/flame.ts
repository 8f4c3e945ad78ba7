import type { FrameLook } from '../frame'
import { seenThrough } from '../glass'
import { flameLength } from '../jet'
import type { Place } from '../layout'
import { blocks, corners, project, type Block, type Point, type View } from '../view'
import { between, outline, type Pen } from './pen'

// A fire on the floor of a compartment: in the cutaway, and as much of it as
// can be seen from outside through an opening that stands open.

// The leaves of a flame: place across its foot, height and breadth as shares of
// the whole, and where in its sway each starts. Chosen by us, by eye.
const LEAVES = [
  [-0.3, 0.55, 0.42, 0.4], [0.32, 0.62, 0.4, 2.1], [-0.1, 0.82, 0.5, 3.7], [0.14, 1, 0.52, 5.2], [0, 0.48, 0.6, 1.3],
] as const

/** The flame of a compartment, on its floor in the middle of the given depth, and no broader than is asked for. */
export function drawFire(pen: Pen, view: View, b: Block, depth: number, hrrKW: number, time: number, most = Infinity): void {
  const room = b.z1 - b.z0
  const height = Math.min(0.96 * room, flameLength({ flameKW: hrrKW }))
  const width = Math.min(most, 0.55 * (b.a1 - b.a0), 0.5 * height + 0.05 * room)
  const foot = project(view, (b.a0 + b.a1) / 2, b.z0, depth)
  for (const [across, tall, broad, start] of LEAVES) {
    const breathe = 1 + 0.08 * Math.sin(4.1 * time + 2 * start)
    leaf(pen, { x: foot.x + across * width, y: foot.y }, broad * width, tall * height * breathe, 3.3 * time + start)
  }
}

/** One leaf of flame, pale at its root and fading out at its tip; it sways about once in two seconds and never flashes. */
function leaf({ ctx }: Pen, foot: Point, w: number, h: number, phase: number): void {
  const lean = foot.x + 0.22 * w * Math.sin(phase)
  const belly = foot.x + 0.1 * w * Math.sin(phase + 1.1)
  ctx.beginPath()
  ctx.moveTo(foot.x - w * 0.42, foot.y)
  ctx.bezierCurveTo(belly - w * 0.75, foot.y - h * 0.4, lean - w * 0.1, foot.y - h * 0.6, lean, foot.y - h)
  ctx.bezierCurveTo(lean + w * 0.12, foot.y - h * 0.62, belly + w * 0.75, foot.y - h * 0.38, foot.x + w * 0.42, foot.y)
  ctx.closePath()
  const fade = ctx.createLinearGradient(0, foot.y, 0, foot.y - h)
  fade.addColorStop(0, 'rgba(255,222,150,0.92)')
  fade.addColorStop(0.3, 'rgba(250,168,66,0.85)')
  fade.addColorStop(0.65, 'rgba(224,98,28,0.65)')
  fade.addColorStop(1, 'rgba(170,48,14,0)')
  ctx.fillStyle = fade
  ctx.fill()
}

export const SEEN_KW = 0.3 // a candle's worth and more shows in a dark room; chosen by us

/** What can be seen of the fire through an open opening: its glow on the room, and the flame itself. */
export function drawSeenFire(pen: Pen, view: View, place: Place, frame: FrameLook, time: number): void {
  const index = view.layout.boxes.findIndex((box) => box.id === place.opening.from)
  const hrrKW = frame.compartments[index]?.hrrKW ?? 0
  const open = frame.openings[place.index]?.open ?? 0
  const block = blocks(view).find(({ box }) => box.id === place.opening.from)
  const through = seenThrough(view, place, frame)
  if (!(hrrKW > SEEN_KW) || through < 0.05 || !block) return
  const [tl, tr, br, bl] = corners(view, place)
  const { ctx } = pen
  const shut = open < 0.02 ? 0 : 1 - open // behind a pane that is shut all of it shows
  ctx.save()
  ctx.globalAlpha *= through
  outline(pen, [between(tl, tr, shut), tr, br, between(bl, br, shut)])
  ctx.clip()
  const depth = (block.d0 + block.d1) / 2
  const seat = project(view, (block.a0 + block.a1) / 2, block.z0, depth)
  const room = block.z1 - block.z0
  const reach = Math.min(1.1 * room, 0.2 * room + 0.8 * flameLength({ flameKW: hrrKW }))
  const glow = ctx.createRadialGradient(seat.x, seat.y, 0, seat.x, seat.y, reach)
  glow.addColorStop(0, 'rgba(255,176,84,0.7)')
  glow.addColorStop(0.45, 'rgba(206,92,30,0.34)')
  glow.addColorStop(1, 'rgba(150,50,12,0)')
  ctx.fillStyle = glow
  ctx.fillRect(seat.x - reach, seat.y - reach, 2 * reach, 2 * reach)
  drawFire(pen, view, block, depth, hrrKW, time)
  ctx.restore()
}
