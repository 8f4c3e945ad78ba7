import { random } from '../noise'
import type { View } from '../view'
import type { Palette } from './palette'
import type { Pen } from './pen'

/** Sky, woods far off, ground, and from across the road the road itself. */
export function drawGround({ ctx, pixel }: Pen, view: View, palette: Palette): void {
  const { widthM, heightM, groundM } = view
  const horizon = groundM - 0.05 * heightM
  const sky = ctx.createLinearGradient(0, 0, 0, horizon)
  sky.addColorStop(0, palette.skyTop)
  sky.addColorStop(1, palette.skyLow)
  ctx.fillStyle = sky
  ctx.fillRect(0, 0, widthM, horizon)
  woods(ctx, view, horizon, 0.075 * heightM, 3, palette.woods)
  woods(ctx, view, horizon, 0.042 * heightM, 8, palette.woodsNear)
  const ground = ctx.createLinearGradient(0, horizon, 0, heightM)
  ground.addColorStop(0, palette.groundFar)
  ground.addColorStop(1, palette.ground)
  ctx.fillStyle = ground
  ctx.fillRect(0, horizon, widthM, heightM - horizon)
  ctx.fillStyle = palette.grain
  ctx.fillRect(0, horizon, widthM, pixel)
  if (view.away > 1) road(ctx, view, palette)
}

const ROUGH = [1, 0.45, 0.22] as const

/** A line of trees: three sizes of unevenness, the same every time. */
function woods(ctx: Pen['ctx'], { widthM }: View, foot: number, tall: number, seed: number, colour: string): void {
  const next = random(seed)
  const phases = ROUGH.map(() => 20 * next())
  const points = 90
  ctx.beginPath()
  ctx.moveTo(0, foot)
  for (let k = 0; k <= points; k++) {
    const at = (k / points) * 9
    const rough = ROUGH.reduce((sum, share, n) => sum + share * Math.sin(at * (1.3 + 1.9 * n * n) + phases[n]!), 0)
    ctx.lineTo((k / points) * widthM, foot - tall * (0.62 + 0.22 * rough))
  }
  ctx.lineTo(widthM, foot)
  ctx.closePath()
  ctx.fillStyle = colour
  ctx.fill()
}

function road(ctx: Pen['ctx'], { widthM, heightM, groundM }: View, palette: Palette): void {
  const far = groundM + 0.35 * (heightM - groundM)
  ctx.fillStyle = palette.road
  ctx.fillRect(0, far, widthM, 0.5 * (heightM - groundM))
  ctx.fillStyle = palette.trim
  ctx.globalAlpha = 0.5
  const dash = widthM / 9
  for (let k = 0; k < 9; k++) ctx.fillRect((k + 0.25) * dash, far + 0.24 * (heightM - groundM), 0.5 * dash, 0.008 * heightM)
  ctx.globalAlpha = 1
}
