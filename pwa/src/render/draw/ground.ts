import type { View } from '../view'
import type { Palette } from './palette'
import type { Pen } from './pen'

/** Sky and ground behind everything. */
export function drawGround({ ctx, pixel }: Pen, view: View, palette: Palette): void {
  const sky = ctx.createLinearGradient(0, 0, 0, view.groundM)
  sky.addColorStop(0, palette.skyTop)
  sky.addColorStop(1, palette.skyLow)
  ctx.fillStyle = sky
  ctx.fillRect(0, 0, view.widthM, view.heightM)
  const horizon = view.groundM - 0.045 * view.heightM
  const ground = ctx.createLinearGradient(0, horizon, 0, view.heightM)
  ground.addColorStop(0, palette.groundFar)
  ground.addColorStop(1, palette.ground)
  ctx.fillStyle = ground
  ctx.fillRect(0, horizon, view.widthM, view.heightM - horizon)
  ctx.fillStyle = palette.grain
  ctx.fillRect(0, horizon, view.widthM, pixel)
}
