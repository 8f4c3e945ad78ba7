import type { Scenario } from '../wire.gen'
import { STEP_S } from './fluid/step'
import type { FrameLook } from './frame'
import { FINENESS, Picture } from './picture'
import type { View } from './view'
import type { Wisps } from './wisps'

const GRAVITY = 9.81 // m/s2

// A new picture shows a fire that has been smoking, for as many times as gas
// takes to rise by the building's height (Froude): the smoke of a house comes up
// slower than that of a box. Chosen by us.
const RISES = 14

/** Few enough for a slow phone; on fewer, an eave holds smoke back for long. Chosen by us, by eye. */
const CELLS = FINENESS[3]

/**
 * The first seconds of a picture's smoke, which nobody sees. They are reckoned
 * on coarse cells, a few steps at a time where a tap may be waiting; what
 * a step takes tells how fine the cells may be that go on from there.
 */
export class HeadStart {
  readonly #scenario: Scenario
  readonly #view: View
  #picture: Picture | undefined
  #left: number
  #fastest = Infinity

  constructor(scenario: Scenario, view: View) {
    this.#scenario = scenario
    this.#view = view
    this.#left = Math.round((RISES * Math.sqrt(view.layout.top / GRAVITY)) / STEP_S)
  }

  /** Made when it is first asked for, and not in the same frame as the building is drawn. */
  get picture(): Picture {
    return (this.#picture ??= new Picture(this.#scenario, this.#view, CELLS))
  }

  /** What a step takes, in ms a fine cell: the fastest steps seen, as the first of a script are slow everywhere. */
  get msPerCell(): number { return this.#fastest / CELLS }

  /** Goes on, for about so many ms of script. Returns whether it is over. */
  run(frame: FrameLook, wisps: Wisps, ms: number): boolean {
    if (!this.picture.makeReady(ms)) return false
    const began = performance.now()
    let took = 0
    let done = 0
    while (this.#left > 0 && took < ms) {
      this.picture.follow(frame)
      this.picture.step()
      wisps.step(this.picture.inlets())
      this.#left--
      done++
      took = performance.now() - began
    }
    if (done > 0) this.#fastest = Math.min(this.#fastest, took / done)
    return this.#left === 0
  }
}
