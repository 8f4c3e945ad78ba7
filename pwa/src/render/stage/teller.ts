import { frameLength, writeFrame, type FrameLook } from '../frame'
import type { SceneProps } from '../scene-props'
import type { Daylight } from '../draw/palette'
import type { Lent } from './stage'
import type { Standing } from './told'

/** The canvas on the page, and how many times larger than in the hand letters and lines are, where it is looked at from afar. */
interface Size {
  width: number
  height: number
  letters?: number
}

interface Looked {
  props: SceneProps
  /** The light, where a person chose one. */
  chosen: Daylight | undefined
  standing: { near: boolean; far: boolean }
}

/** Tells the thread that draws of one scene: only what changed since it was told last. */
export class Teller {
  readonly #lent: Lent
  #scenario: SceneProps['scenario'] | undefined
  #standing = ''
  /** The newest frame that was told; null where that was none. */
  #values: Float64Array | null = null

  constructor(lent: Lent) {
    this.#lent = lent
  }

  tell(looked: Looked, size: Size): void {
    const { scenario, frame } = looked.props
    if (scenario !== this.#scenario) {
      this.#scenario = scenario
      this.#values = null
      this.#lent.tell({ scenario })
    }
    const standing = standingOf(looked, size)
    const said = JSON.stringify(standing)
    if (said !== this.#standing) {
      this.#standing = said
      this.#lent.tell({ standing })
    }
    if (standing.shown) this.#tellFrame(frame())
  }

  #tellFrame(frame: FrameLook | null): void {
    if (!frame) {
      if (this.#values) this.#lent.tell({ frame: null })
      this.#values = null
      return
    }
    const length = frameLength(frame.compartments.length, frame.openings.length)
    const fresh = this.#values?.length !== length
    if (fresh) this.#values = new Float64Array(length)
    if (writeFrame(frame, this.#values!) || fresh) this.#lent.tell({ frame: this.#values })
  }
}

function standingOf({ props, chosen, standing }: Looked, { width, height, letters = 1 }: Size): Standing {
  const { side, cutaway = false, selected, paused = false, wind } = props
  return {
    side, cutaway, selected, paused, wind, light: chosen, ...standing, near: standing.near,
    size: { width: width / letters, height: height / letters, density: devicePixelRatio * letters }, shown: !document.hidden && width > 0,
  }
}
