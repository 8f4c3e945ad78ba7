import { createEmptyCard, fsrs, Rating, State, type Card, type Grade } from 'ts-fsrs'

// How well each family is likely to be held in memory now. The model is FSRS as
// ts-fsrs keeps it (MIT); nothing of it is our own but the grade.

/** One committed scene, as spacing sees it. */
export interface Trial {
  family: string
  /** When, in ms since 1970 by the device's clock. */
  t: number
  /** Mean error of its parts: 0 as it was, 1 as wrong as can be. From the engine's verdict. */
  error: number
}

const longestGap = 180 // days; chosen by us: half a year is the longest that a refresher should wait
const retry = '10m' // a family that went wrong is due in the next set, not in the same one; chosen by us

const model = fsrs({ enable_fuzz: false, maximum_interval: longestGap, learning_steps: [retry], relearning_steps: [retry] })

/** Families by id, each with its trace in memory. */
export type Memory = Map<string, Card>

/**
 * The grade, from the error alone: nobody grades oneself. Chosen by us: as it was
 * is good, one part in four off by a step or so is hard, all else is to be shown
 * again. The model's fourth grade, for ease, is not given: a lucky guess looks alike.
 */
function gradeOf(error: number): Grade {
  if (error <= 0.02) return Rating.Good
  return error <= 0.15 ? Rating.Hard : Rating.Again
}

/** Adds one trial. A clock that ran backward is read as standing still. */
export function learn(memory: Memory, { family, t, error }: Trial): void {
  const before = memory.get(family)
  const card: Card = before ?? createEmptyCard(t)
  const at = Math.max(t, card.last_review?.getTime() ?? t)
  memory.set(family, model.next(card, at, gradeOf(error)).card)
}

export function remember(trials: readonly Trial[]): Memory {
  const memory: Memory = new Map()
  for (const trial of trials) learn(memory, trial)
  return memory
}

/** How likely the family is still known, 0 to 1; undefined where it was never met. */
export function recall(memory: Memory, family: string, now: number): number | undefined {
  const card = memory.get(family)
  if (!card || card.state === State.New) return undefined
  return model.get_retrievability(card, Math.max(now, card.last_review?.getTime() ?? now), false)
}

/** Whether it is time for a family that was met before. */
export function due(memory: Memory, family: string, now: number): boolean {
  const card = memory.get(family)
  return card !== undefined && card.due.getTime() <= now
}
