import { STEP_S } from './fluid/step'

/** Most steps that one picture makes up for: a still its whole second, a moving picture two. Chosen by us. */
const STEPS_IN_STILL = 36
const STEPS_IN_MOVING = 2

/** How much one frame counts in what is usual on a screen, and as how many times as late as usual at most: one that came late is not a slow screen. Chosen by us. */
const NEWEST = 0.1
const MOST_LATE = 1.5

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
  /** Seconds from one frame to the next, as is usual on this screen. */
  #usual = 0

  /** Something changed that must be painted, though no step is due. */
  ask(): void {
    this.#waits = true
  }

  /** The turn of one frame that comes so many seconds after the one before. */
  take(seconds: number, paused: boolean, inStills: boolean): Turn {
    if (paused) this.#waits = true
    else this.#due = Math.min(this.#due + seconds, inStills ? 1.2 : 3 * STEP_S)
    this.#usual = this.#usual > 0 ? this.#usual + NEWEST * (Math.min(seconds, MOST_LATE * this.#usual) - this.#usual) : seconds
    const both = inStills || this.#usual > 0.8 * STEP_S // a slow screen has no frame to spare between step and paint
    const steps = paused || (this.#waits && !both) ? 0 : this.#take(this.#most(inStills))
    const draw = steps > 0 ? both : this.#waits
    this.#waits = steps > 0 && !draw
    return { steps, draw }
  }

  /** A screen that has a frame for each step and each paint takes one step in a frame also when one came late: the smoke lags for a moment, no frame takes long. */
  #most(inStills: boolean): number {
    if (inStills) return STEPS_IN_STILL
    return this.#usual < 0.55 * STEP_S ? 1 : STEPS_IN_MOVING
  }

  #take(most: number): number {
    const steps = Math.min(most, Math.floor(this.#due / STEP_S))
    this.#due -= steps * STEP_S
    return steps
  }
}
