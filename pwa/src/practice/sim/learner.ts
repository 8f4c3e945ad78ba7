import type { Chance } from '../../local/sim/chance'

// What a simulated trainee is. Each learns and forgets by a published model that
// is another than the one that plans the practice: else the measurement would run
// in a circle. Common to all, and a limit of what they show: families are learned
// apart, so that nothing learned of one helps another, and a trainee never tires,
// stays away or gives up.

/** Seconds of practice so far, and of life between the sets. */
export interface Clock {
  within: number
  between: number
}

export interface Learner {
  /** How likely a family would be answered right now. */
  chanceOf(family: number, now: Clock): number
  /** The share of all families that would be answered right now. */
  skill(now: Clock): number
  /** Answers, is told why, and is perhaps a little wiser. */
  answer(family: number, now: Clock): boolean
}

/** One guess in five is right: five levels (P' = 1/k + (1 - 1/k) P, the correction for guessing). */
export const luck = 1 / 5

/** A standard normal number (Box and Muller 1958). */
export function normal(chance: Chance): number {
  return Math.sqrt(-2 * Math.log(1 - chance.next())) * Math.cos(2 * Math.PI * chance.next())
}
