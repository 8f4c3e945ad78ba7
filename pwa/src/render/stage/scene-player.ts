import type { Scenario } from '../../wire.gen'
import type { Sheet } from '../draw/pen'
import { readFrame, type FrameLook } from '../frame'
import { Show } from '../show'
import type { PageLook, Standing, Told } from './told'

const STILL_S = 1 // with reduced motion, one picture a second

/** One scene on its canvas, as the page tells of it. */
export class ScenePlayer {
  readonly #show: Show
  #scenario: Scenario | undefined
  #standing: Standing | undefined
  #frame: FrameLook | null = null
  #last = NaN

  constructor(canvas: Sheet) {
    this.#show = new Show(canvas)
  }

  tell(told: Extract<Told, { scenario: unknown } | { standing: unknown } | { frame: unknown }>): void {
    if ('scenario' in told) {
      this.#scenario = told.scenario
      this.#frame = null
    } else if ('standing' in told) this.#standing = told.standing
    else this.#follow(told.frame)
  }

  #follow(values: Float64Array | null): void {
    const { compartments, openings } = this.#scenario!
    this.#frame = values && readFrame(values, compartments.length, openings.length, this.#frame ?? undefined)
  }

  /** Draws what is due. Returns the script time of the picture; undefined where none was due. */
  tick(now: number, page: PageLook): number | undefined {
    const scenario = this.#scenario
    const standing = this.#standing
    if (!scenario || !standing?.shown) {
      this.#last = now
      return undefined
    }
    if (Number.isNaN(this.#last)) this.#last = now
    const seconds = Math.min(1.2, (now - this.#last) / 1000)
    if (page.calm && seconds < STILL_S && !this.#show.catchingUp) return undefined
    this.#last = now
    return this.#show.advance({ ...standing, scenario, frame: this.#frame, us: page.us, theme: page.theme, inPieces: true }, seconds, page.calm)
  }
}
