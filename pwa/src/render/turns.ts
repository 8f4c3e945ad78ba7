import { STEP_S } from './fluid/step'

/** Most steps that one picture makes up for: a still its whole second, a moving picture two. Chosen by us. */
const STEPS_IN_STILL = 36
const STEPS_IN_MOVING = 2

/** What is done for one frame of the screen: how often the smoke is stepped, and whether it is painted. */
export interface Turn { steps: number; draw: boolean }

/**
 * Shares the frames of a screen out among stepping and painting. A fast screen
 * takes turns, so that neither holds up a tap for long; a slow one does both in
 * each of its frames. Whatever waits to be painted is painted at the latest one
 * frame after its step.
 */
export class Turns {
  #due = 0
  #waits = false

  /** Something changed that must be painted, though no step is due. */
  ask(): void {
    this.#waits = true
  }

  /** The turn of one frame that comes so many seconds after the one before. */
  take(seconds: number, paused: boolean, inStills: boolean): Turn {
    if (paused) this.#waits = true
    else this.#due = Math.min(this.#due + seconds, inStills ? 1.2 : 3 * STEP_S)
    const both = inStills || seconds > 0.8 * STEP_S // a slow screen has no frame to spare between step and paint
    const steps = paused || (this.#waits && !both) ? 0 : this.#take(inStills ? STEPS_IN_STILL : STEPS_IN_MOVING)
    const draw = steps > 0 ? both : this.#waits
    this.#waits = steps > 0 && !draw
    return { steps, draw }
  }

  #take(most: number): number {
    const steps = Math.min(most, Math.floor(this.#due / STEP_S))
    this.#due -= steps * STEP_S
    return steps
  }
}
