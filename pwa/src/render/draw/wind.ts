import { windSpeedIn } from '../../words/wind-speed'
import type { Side } from '../../wire.gen'
import { type View } from '../view'
import type { Palette } from './palette'
import type { Pen } from './pen'

/** Winds under this are not drawn: smoke drifts as much by itself. Chosen by us. */
const CALM_MS = 0.3

// Where the wind goes on the picture when it comes from the front, the left,
// behind and the right, as the wall recedes to the upper right.
const WAYS = [[0.8, -0.6], [1, 0], [-0.8, 0.6], [-1, 0]] as const

export interface Wind { m_s: number; from: Side | undefined }

/** A wind arrow in the upper left, below what a screen writes in the corner: the way it blows as seen from here, longer for more, and its speed. */
export function drawWind({ ctx, pixel }: Pen, view: View, palette: Palette, { m_s: speedMS, from }: Wind, us: boolean): void {
  if (!(speedMS >= CALM_MS) || from === undefined) return
  const order = ['A', 'B', 'C', 'D'] as const
  const [dx, dy] = WAYS[(order.indexOf(from) - order.indexOf(view.side) + 4) % 4]!
  const length = 14 + 3 * Math.min(9, speedMS)
  ctx.save()
  ctx.translate(40 * pixel, 78 * pixel)
  ctx.scale(pixel, pixel)
  ctx.strokeStyle = palette.ink
  ctx.fillStyle = palette.ink
  ctx.lineWidth = 2
  ctx.lineCap = 'round'
  ctx.beginPath()
  ctx.moveTo((-dx * length) / 2, (-dy * length) / 2)
  ctx.lineTo((dx * length) / 2, (dy * length) / 2)
  for (const turn of [2.6, -2.6]) {
    ctx.moveTo((dx * length) / 2, (dy * length) / 2)
    ctx.lineTo((dx * length) / 2 + 8 * (dx * Math.cos(turn) - dy * Math.sin(turn)), (dy * length) / 2 + 8 * (dx * Math.sin(turn) + dy * Math.cos(turn)))
  }
  ctx.stroke()
  ctx.font = '600 11px system-ui, sans-serif'
  ctx.textAlign = 'center'
  ctx.fillText(windSpeedIn(speedMS, us), 0, 32)
  ctx.restore()
}
