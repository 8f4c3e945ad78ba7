import type { View } from '../view'
import type { Palette } from './palette'
import type { Pen } from './pen'

// How much of what is far away the air between hides: a fifth across a road on
// a hazy day. Chosen by us.
const HIDES = 0.2

/** The air between the eye and something far away; the foreground lies before it. */
export function drawHaze({ ctx }: Pen, { widthM, heightM, groundM }: View, palette: Palette): void {
  const veil = ctx.createLinearGradient(0, 0, 0, heightM)
  const foot = groundM / heightM
  ctx.globalAlpha = HIDES
  veil.addColorStop(0, palette.haze)
  veil.addColorStop(foot, palette.haze)
  veil.addColorStop(Math.min(1, foot + 0.08), 'rgba(0,0,0,0)')
  ctx.fillStyle = veil
  ctx.fillRect(0, 0, widthM, heightM)
  ctx.globalAlpha = 1
}
