import type { Turn } from './turns'

/** Share that goes over from one frame to the other each time that it took longer. Chosen by us. */
const GOES_OVER = 0.02

/**
 * Of the two frames that one picture takes on a fast screen, the first steps the
 * smoke and begins to paint it, and the second ends that and draws. How much is
 * painted in the first is evened out by what either takes; the pixels are the same.
 */
export class Halves {
  /** Share of the smoke's body that is painted in the frame of its step. */
  share = 0.5
  #stepMS = NaN

  /** Takes note of what one frame took. */
  note({ steps, draw }: Turn, tookMS: number): void {
    if (draw && !Number.isNaN(this.#stepMS)) this.share = clamp01(this.share + GOES_OVER * Math.sign(tookMS - this.#stepMS))
    this.#stepMS = steps > 0 && !draw ? tookMS : NaN
  }
}

const clamp01 = (x: number) => (x < 0 ? 0 : x > 1 ? 1 : x)
