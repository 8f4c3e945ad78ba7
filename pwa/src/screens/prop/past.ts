import { COMPARTMENT_LENGTH, FRAME_HEADER, FRAME_HEADER_LENGTH, OPENING, OPENING_LENGTH } from '../../wire.gen'

// What a fire has been: a frame every half second, kept so that one can look
// back at any moment at once, without asking the engine.

/** One step of the engine, s: engine/zone.StepS. */
export const STEP_S = 0.05
/** Steps between two kept frames: half a second, shorter than a person can tell apart on a clock. Chosen by us. */
export const SAMPLE_STEPS = 10

/** Steps a second: dividing by them gives whole seconds exactly, which multiplying by a twentieth does not. */
const STEPS_A_SECOND = 20

export const stepAt = (seconds: number): number => Math.round(seconds * STEPS_A_SECOND)
export const secondsAt = (step: number): number => step / STEPS_A_SECOND

export class Past {
  readonly steps: number[] = []
  readonly frames: Float32Array[] = []
  readonly #words: readonly number[]

  /** `words` are the places of a frame that stand for words, see wordsOf. */
  constructor(words: readonly number[]) {
    this.#words = words
  }

  /** Keeps a frame; a later one of the same step takes its place. */
  add(step: number, values: ArrayLike<number>): void {
    if (this.steps.at(-1) === step) {
      this.steps.pop()
      this.frames.pop()
    }
    this.steps.push(step)
    this.frames.push(Float32Array.from(values))
  }

  /** The same past up to a step; frames are shared, as they never change. */
  upTo(step: number): Past {
    const past = new Past(this.#words)
    const count = this.#countTo(step)
    past.steps.push(...this.steps.slice(0, count))
    past.frames.push(...this.frames.slice(0, count))
    return past
  }

  /** Fills in the frame of a step, in a straight line between the two kept on either side of it. */
  read(step: number, out: Float64Array): void {
    const last = this.steps.length - 1
    const before = Math.max(0, this.#countTo(step) - 1)
    const after = Math.min(before + 1, last)
    const [from, to] = [this.frames[before]!, this.frames[after]!]
    const span = this.steps[after]! - this.steps[before]!
    const share = span > 0 ? Math.max(0, (step - this.steps[before]!) / span) : 0
    for (let i = 0; i < out.length; i++) {
      const mixed = from[i]! + share * (to[i]! - from[i]!)
      out[i] = Number.isNaN(mixed) ? from[i]! : mixed
    }
    for (const i of this.#words) out[i] = from[i]!
    out[FRAME_HEADER.TS] = secondsAt(step)
  }

  /** How many kept frames are not later than a step. */
  #countTo(step: number): number {
    let [low, high] = [0, this.steps.length]
    while (low < high) {
      const middle = (low + high) >> 1
      if (this.steps[middle]! <= step) low = middle + 1
      else high = middle
    }
    return low
  }
}

/** The places of a frame that stand for words or counts: there is nothing half-way between two of them. */
export function wordsOf(compartments: number, openings: number): number[] {
  const at: number[] = [FRAME_HEADER.Stage, FRAME_HEADER.Regime, FRAME_HEADER.Events]
  for (let k = 0; k < openings; k++) {
    const begin = FRAME_HEADER_LENGTH + compartments * COMPARTMENT_LENGTH + k * OPENING_LENGTH
    at.push(begin + OPENING.Flow, begin + OPENING.Colour)
  }
  return at
}
