import type { FrameLook } from '../frame'
import { flameLength } from '../jet'
import type { Place } from '../layout'
import { blocks, corners, project, type Block, type Point, type View } from '../view'
import type { Palette } from './palette'
import { between, outline, type Pen } from './pen'

// A fire on the floor of a compartment: in the cutaway, and as much of it as
// can be seen from outside through an opening that stands open.

/** The flame of a compartment, on its floor in the middle of the given depth. */
export function drawFire(pen: Pen, view: View, palette: Palette, b: Block, depth: number, hrrKW: number, time: number): void {
  const room = b.z1 - b.z0
  const height = Math.min(0.96 * room, flameLength({ flameKW: hrrKW }))
  const width = Math.min(0.5 * (b.a1 - b.a0), 0.45 * height + 0.05 * room)
  const foot = project(view, (b.a0 + b.a1) / 2, b.z0, depth)
  tongue(pen, foot, width, height, `rgb(${palette.hot.join(',')})`, 5.5 * time)
  tongue(pen, foot, 0.72 * width, 0.72 * height, '#f08a30', 5.5 * time + 0.9)
  tongue(pen, foot, 0.42 * width, 0.42 * height, '#ffd98c', 5.5 * time + 1.7)
}

/** One leaf of flame; it sways less than once a second, and never flashes. */
function tongue({ ctx }: Pen, foot: Point, w: number, h: number, colour: string, phase: number): void {
  const lean = foot.x + 0.16 * w * Math.sin(phase)
  ctx.beginPath()
  ctx.moveTo(foot.x - w / 2, foot.y)
  ctx.bezierCurveTo(foot.x - w * 0.7, foot.y - h * 0.45, lean - w * 0.05, foot.y - h * 0.5, lean, foot.y - h)
  ctx.bezierCurveTo(lean + w * 0.2, foot.y - h * 0.55, foot.x + w * 0.75, foot.y - h * 0.4, foot.x + w / 2, foot.y)
  ctx.closePath()
  ctx.fillStyle = colour
  ctx.fill()
}

const SEEN_KW = 0.3 // a candle's worth and more shows in a dark room; chosen by us

/** What can be seen of the fire through an open opening: its glow on the room, and the flame itself. */
export function drawSeenFire(pen: Pen, view: View, palette: Palette, place: Place, frame: FrameLook, time: number): void {
  const index = view.layout.boxes.findIndex((box) => box.id === place.opening.from)
  const hrrKW = frame.compartments[index]?.hrrKW ?? 0
  const open = frame.openings[place.index]?.open ?? 0
  const block = blocks(view).find(({ box }) => box.id === place.opening.from)
  if (!(hrrKW > SEEN_KW) || open < 0.02 || !block) return
  const [tl, tr, br, bl] = corners(view, place)
  const { ctx } = pen
  ctx.save()
  outline(pen, [between(tl, tr, 1 - open), tr, br, between(bl, br, 1 - open)])
  ctx.clip()
  const depth = (block.d0 + block.d1) / 2
  const seat = project(view, (block.a0 + block.a1) / 2, block.z0, depth)
  const room = block.z1 - block.z0
  const reach = Math.min(1.4 * room, 0.25 * room + flameLength({ flameKW: hrrKW }))
  const glow = ctx.createRadialGradient(seat.x, seat.y, 0, seat.x, seat.y, reach)
  glow.addColorStop(0, 'rgba(255,176,84,0.85)')
  glow.addColorStop(0.45, 'rgba(214,96,30,0.5)')
  glow.addColorStop(1, 'rgba(150,50,12,0)')
  ctx.fillStyle = glow
  ctx.fillRect(seat.x - reach, seat.y - reach, 2 * reach, 2 * reach)
  drawFire(pen, view, palette, block, depth, hrrKW, time)
  ctx.restore()
}
