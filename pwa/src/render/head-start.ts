import type { Scenario } from '../wire.gen'
import { STEP_S } from './fluid/step'
import type { FrameLook } from './frame'
import { FINENESS, Picture } from './picture'
import type { Light } from './tone'
import type { View } from './view'
import type { Wisps } from './wisps'

const GRAVITY = 9.81 // m/s2

// A new picture shows a fire that has been smoking, for as many times as gas
// takes to rise by the building's height (Froude): the smoke of a house comes up
// slower than that of a box. Chosen by us.
const RISES = 14

/** Few enough for a slow phone; on fewer, an eave holds smoke back for long. Chosen by us, by eye. */
const CELLS = FINENESS[3]

/** Its last steps are painted too, so that the first picture shown is not the first painted, which is slow everywhere. Chosen by us. */
const PAINTED = 8
/** Parts in which the body of one is painted, so that none takes long. Chosen by us. */
const BODY_PARTS = 8
/** Script time over which it is measured what a step and its painting take, in ms: clocks of browsers are coarse. Chosen by us. */
const MEASURED_MS = 2

/**
 * The first seconds of a picture's smoke, which nobody sees. They are reckoned
 * on coarse cells, a part of a step at a time where a tap may be waiting; what the
 * last of them take tells how fine the cells may be that go on from there.
 */
export class HeadStart {
  readonly #scenario: Scenario
  readonly #view: View
  #picture: Picture | undefined
  #parts: Generator<boolean> | undefined
  #frame!: FrameLook
  #painting = false
  /** What the steps since it was last measured took, and how many they are. */
  #tookMS = 0
  #steps = 0
  #fastest = Infinity

  constructor(scenario: Scenario, view: View) {
    this.#scenario = scenario
    this.#view = view
  }

  /** Made when it is first asked for, and not in the same frame as the building is drawn. */
  get picture(): Picture {
    return (this.#picture ??= new Picture(this.#scenario, this.#view, CELLS))
  }

  /** What a step and its painting take on either of the two frames that they are shared out to, in ms a fine cell: the fastest seen. */
  get msPerCell(): number {
    const stepMS = this.#fastest < Infinity ? this.#fastest : this.#tookMS / this.#steps
    return stepMS / 2 / CELLS
  }

  /** Goes on, for about so many ms of script. Returns whether it is over. */
  run(frame: FrameLook, wisps: Wisps, light: Light, ms: number): boolean {
    if (!this.picture.makeReady(ms)) return false
    this.#frame = frame
    this.#parts ??= this.#run(wisps, light)
    const began = performance.now()
    let before = began
    while (before - began < ms) {
      const { value: whole, done } = this.#parts.next()
      const now = performance.now()
      if (this.#painting) this.#tookMS += now - before
      before = now
      if (done) return true
      if (whole) this.#measure()
    }
    return false
  }

  /** Says after every part whether a step with its painting is whole. */
  *#run(wisps: Wisps, light: Light): Generator<boolean> {
    const { picture } = this
    for (let left = Math.round((RISES * Math.sqrt(this.#view.layout.top / GRAVITY)) / STEP_S); left > 0; left--) {
      this.#painting = left <= PAINTED
      picture.follow(this.#frame)
      for (const _ of picture.stepInParts()) yield false
      wisps.step(picture.inlets())
      yield false
      if (!this.#painting) continue
      for (let k = 1; k <= BODY_PARTS; k++) {
        picture.prepare(k / BODY_PARTS)
        yield false
      }
      picture.paint(light)
      this.#steps++
      yield true
    }
  }

  #measure(): void {
    if (this.#tookMS < MEASURED_MS) return
    this.#fastest = Math.min(this.#fastest, this.#tookMS / this.#steps)
    this.#tookMS = this.#steps = 0
  }
}
