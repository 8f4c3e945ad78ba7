import type { Palette } from './draw/palette'
import type { Pen } from './draw/pen'
import { STEP_S } from './fluid/step'
import type { Inlet } from './jet'
import { random } from './noise'

// Dust and old haze that air takes along as it is drawn in: fine strokes from
// before the opening, which is lower on the picture, that draw together and end
// in it, faint at their tails. Nothing is drawn where nothing is drawn in.

const EACH = 5 // strokes per opening, chosen by us
const TRAIL = 16 // steps of path that show behind each
const LIFE_S = 1.6
const COMES_S = 0.16 // time in which a stroke comes up, or goes
const SLOW_PER_S = 0.25 // slower than a quarter of the opening's width in a second, no stroke would get there

interface Wisp {
  xs: Float32Array; ys: Float32Array; age: number; length: number
  /** Where in the inlet it goes in, as shares of its width and height. */
  goesX: number; goesY: number
  /** How far its way is bent, as a share of what is left of it. */
  bend: number
}

export class Wisps {
  readonly #random = random(4711)
  readonly #wisps = new Map<number, Wisp[]>()

  step(inlets: readonly Inlet[]): void {
    for (const inlet of inlets) {
      let list = this.#wisps.get(inlet.index)
      if (!list) this.#wisps.set(inlet.index, (list = this.#start()))
      for (const wisp of list) this.#move(wisp, inlet)
    }
  }

  draw({ ctx, pixel }: Pen, palette: Palette, inlets: readonly Inlet[]): void {
    ctx.strokeStyle = palette.mote
    ctx.lineWidth = 1 * pixel
    ctx.lineCap = 'round'
    for (const inlet of inlets) {
      if (inlet.speedMS < SLOW_PER_S * inlet.reach) continue
      for (const wisp of this.#wisps.get(inlet.index) ?? []) {
        if (wisp.length < 2) continue
        const strong = 0.3 * Math.max(0, Math.min(1, wisp.age / COMES_S, (LIFE_S - wisp.age) / COMES_S))
        for (let from = 0; from < wisp.length - 1; from += PART) tail(ctx, wisp, from, strong * (1 - from / TRAIL))
      }
    }
    ctx.globalAlpha = 1
  }

  #start(): Wisp[] {
    return Array.from({ length: EACH }, (_, k) => ({
      xs: new Float32Array(TRAIL), ys: new Float32Array(TRAIL), length: 0, age: -(k * LIFE_S) / EACH,
      goesX: 0.5, goesY: 0.5, bend: 0,
    }))
  }

  #move(wisp: Wisp, inlet: Inlet): void {
    wisp.age += STEP_S
    if (wisp.age < 0) return
    const { area, reach, speedMS } = inlet
    if (wisp.length === 0 || wisp.age > LIFE_S) {
      wisp.goesX = 0.12 + 0.76 * this.#random()
      wisp.goesY = 0.25 + 0.6 * this.#random()
      wisp.bend = 0.9 * (this.#random() - 0.5)
    }
    const goalX = area.x0 + wisp.goesX * (area.x1 - area.x0)
    const goalY = area.y0 + wisp.goesY * (area.y1 - area.y0)
    if (wisp.length === 0 || wisp.age > LIFE_S) {
      const angle = (0.3 + 0.4 * this.#random()) * Math.PI // from before it, within a fan
      const far = reach * (0.7 + 0.6 * this.#random())
      wisp.xs[0] = goalX + far * Math.cos(angle)
      wisp.ys[0] = area.y1 + 0.55 * far * Math.sin(angle)
      wisp.length = 1
      wisp.age = 0
      return
    }
    const toX = goalX - wisp.xs[0]!
    const toY = goalY - wisp.ys[0]!
    const gap = Math.hypot(toX, toY)
    if (gap < 0.08 * reach) {
      wisp.length = 0
      wisp.age = -LIFE_S * 0.5 * this.#random()
      return
    }
    // Flow toward a hole speeds up as it nears: as 1 over distance in a plane.
    const speed = speedMS * Math.min(1.2, (0.7 * reach) / gap)
    for (let k = Math.min(wisp.length, TRAIL - 1); k > 0; k--) {
      wisp.xs[k] = wisp.xs[k - 1]!
      wisp.ys[k] = wisp.ys[k - 1]!
    }
    wisp.length = Math.min(TRAIL, wisp.length + 1)
    // It comes round a bend that straightens as it nears.
    const aside = wisp.bend * Math.min(1, gap / reach)
    const along = Math.sqrt(1 + aside * aside) * gap
    wisp.xs[0]! += (speed * STEP_S * (toX - aside * toY)) / along
    wisp.ys[0]! += (speed * STEP_S * (toY + aside * toX)) / along
  }
}

const PART = 4 // steps of a trail that are drawn alike

/** One part of a trail, fainter and finer the farther back it lies. */
function tail(ctx: Pen['ctx'], { xs, ys, length }: Wisp, from: number, strong: number): void {
  ctx.globalAlpha = strong * strong + 0.4 * strong
  ctx.beginPath()
  ctx.moveTo(xs[from]!, ys[from]!)
  for (let k = from + 1; k <= Math.min(from + PART, length - 1); k++) ctx.lineTo(xs[k]!, ys[k]!)
  ctx.stroke()
}
