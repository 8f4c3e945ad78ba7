import type { Point } from '../view'
import type { Palette } from './palette'
import type { Pen } from './pen'

export type Align = 'left' | 'right'

/** A part of the picture, in its units; y falls. */
export interface Box { x0: number; y0: number; x1: number; y1: number }

const FONT = '600 11px system-ui, sans-serif'
const CHIP = { above: 11, high: 15, beside: 3 } // screen pixels of paper around a figure

/** The place that a figure takes. */
export function labelBox({ ctx, pixel }: Pen, text: string, { x, y, align }: Point & { align: Align }): Box {
  ctx.font = FONT
  const wide = (ctx.measureText(text).width + 2 * CHIP.beside) * pixel
  const x0 = align === 'left' ? x - CHIP.beside * pixel : x + CHIP.beside * pixel - wide
  const y0 = y - CHIP.above * pixel
  return { x0, y0, x1: x0 + wide, y1: y0 + CHIP.high * pixel }
}

/** A small figure on a chip of paper, so that it reads on any colour. */
export function label(
  { ctx, pixel }: Pen, palette: Palette, text: string, x: number, y: number, align: Align,
): void {
  ctx.save()
  ctx.translate(x, y)
  ctx.scale(pixel, pixel) // fonts below one unit are not drawn, so write in screen pixels
  ctx.font = FONT
  ctx.textAlign = align
  ctx.textBaseline = 'alphabetic'
  const wide = ctx.measureText(text).width + 2 * CHIP.beside
  ctx.globalAlpha *= 0.82
  ctx.fillStyle = palette.paper
  ctx.fillRect(align === 'left' ? -CHIP.beside : CHIP.beside - wide, -CHIP.above, wide, CHIP.high)
  ctx.globalAlpha = Math.min(1, ctx.globalAlpha / 0.82)
  ctx.fillStyle = palette.ink
  ctx.fillText(text, 0, 0)
  ctx.restore()
}

/** An arrow whose width grows with the mass flow, hot flow in ember, cold in ink; and the place that it takes. */
export function flowArrow(
  { ctx, pixel }: Pen, palette: Palette, at: Point, toward: Point, kgS: number, gasC: number,
): Box | undefined {
  if (!(kgS > 0.0005)) return undefined
  const strong = Math.min(1, Math.pow(kgS / 0.5, 0.3)) // 0.5 kg/s, a small room's door at flashover, is drawn widest; chosen by us
  const length = (16 + 22 * strong) * pixel
  const wide = (1.5 + 4.5 * strong) * pixel
  const norm = Math.hypot(toward.x, toward.y) || 1
  const dx = toward.x / norm
  const dy = toward.y / norm
  ctx.save()
  ctx.translate(at.x, at.y)
  ctx.transform(dx, dy, -dy, dx, 0, 0)
  ctx.beginPath()
  const head = Math.min(length * 0.55, 2.2 * wide + 3 * pixel)
  ctx.moveTo(-length / 2, -wide / 2)
  ctx.lineTo(length / 2 - head, -wide / 2)
  ctx.lineTo(length / 2 - head, -wide * 1.15 - pixel)
  ctx.lineTo(length / 2, 0)
  ctx.lineTo(length / 2 - head, wide * 1.15 + pixel)
  ctx.lineTo(length / 2 - head, wide / 2)
  ctx.lineTo(-length / 2, wide / 2)
  ctx.closePath()
  ctx.fillStyle = Number.isFinite(gasC) && gasC > 60 ? palette.mark : palette.ink
  ctx.fill()
  ctx.strokeStyle = palette.paper
  ctx.lineWidth = pixel
  ctx.stroke()
  ctx.restore()
  const across = wide * 1.15 + pixel
  const x = (Math.abs(dx) * length) / 2 + Math.abs(dy) * across
  const y = (Math.abs(dy) * length) / 2 + Math.abs(dx) * across
  return { x0: at.x - x, y0: at.y - y, x1: at.x + x, y1: at.y + y }
}
