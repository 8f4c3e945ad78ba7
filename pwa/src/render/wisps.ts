import type { Palette } from './draw/palette'
import type { Pen } from './draw/pen'
import { STEP_S } from './fluid/step'
import type { Rect } from './jet'
import { random } from './noise'
import type { Picture } from './picture'

// Dust and old haze that air takes along as it is drawn in, drawn as fine short
// strokes that follow the computed air and end in the opening. Nothing is drawn
// where nothing is drawn in.

const EACH = 14 // strokes per opening, chosen by us
const TRAIL = 9 // steps of path that show behind each
const LIFE_S = 1.6

interface Wisp {
  xs: Float32Array; ys: Float32Array; age: number; length: number
  /** Where in the inlet it goes in, as shares of its width and height. */
  goesX: number; goesY: number
}

export class Wisps {
  readonly #picture: Picture
  readonly #random = random(4711)
  readonly #wisps = new Map<number, Wisp[]>()

  constructor(picture: Picture) {
    this.#picture = picture
  }

  step(): void {
    for (const inlet of this.#picture.inlets()) {
      let list = this.#wisps.get(inlet.index)
      if (!list) this.#wisps.set(inlet.index, (list = this.#start()))
      for (const wisp of list) this.#move(wisp, inlet)
    }
  }

  draw({ ctx, pixel }: Pen, palette: Palette): void {
    ctx.strokeStyle = palette.mote
    ctx.lineWidth = 1.1 * pixel
    ctx.lineCap = 'round'
    for (const inlet of this.#picture.inlets()) {
      if (inlet.speedMS < 0.02) continue
      for (const wisp of this.#wisps.get(inlet.index) ?? []) {
        if (wisp.length < 2) continue
        const share = wisp.age / LIFE_S
        ctx.globalAlpha = 0.6 * Math.sin(Math.PI * Math.min(1, Math.max(0, share)))
        ctx.beginPath()
        ctx.moveTo(wisp.xs[0]!, wisp.ys[0]!)
        for (let k = 1; k < wisp.length; k++) ctx.lineTo(wisp.xs[k]!, wisp.ys[k]!)
        ctx.stroke()
      }
    }
    ctx.globalAlpha = 1
  }

  #start(): Wisp[] {
    return Array.from({ length: EACH }, (_, k) => ({
      xs: new Float32Array(TRAIL), ys: new Float32Array(TRAIL), length: 0, age: -(k * LIFE_S) / EACH,
      goesX: 0.5, goesY: 0.5,
    }))
  }

  #move(wisp: Wisp, inlet: Inlet): void {
    wisp.age += STEP_S
    if (wisp.age < 0) return
    const { area, reach, speedMS } = inlet
    if (wisp.length === 0 || wisp.age > LIFE_S) {
      wisp.goesX = 0.1 + 0.8 * this.#random()
      wisp.goesY = 0.1 + 0.8 * this.#random()
    }
    const goalX = area.x0 + wisp.goesX * (area.x1 - area.x0)
    const goalY = area.y0 + wisp.goesY * (area.y1 - area.y0)
    if (wisp.length === 0 || wisp.age > LIFE_S) {
      const angle = (0.08 + 0.9 * this.#random()) * Math.PI // from before and beside: the clear side
      const far = reach * (0.7 + 0.9 * this.#random())
      wisp.xs[0] = goalX + far * Math.cos(angle)
      wisp.ys[0] = goalY + 0.5 * far * Math.sin(angle)
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
    wisp.xs[0]! += (speed * STEP_S * toX) / gap
    wisp.ys[0]! += (speed * STEP_S * toY) / gap
  }
}

/** Where air goes in. */
export interface Inlet { index: number; area: Rect; reach: number; speedMS: number }
