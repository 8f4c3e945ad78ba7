import type { Part, Skill } from '../../wire.gen'
import { skillOf, type Answered } from '../../practice/record'

// What the plots are drawn from, point by point, out of the verdicts that the
// engine gave. Nothing is scored here: steps and errors come with each verdict,
// and what they add up to comes from the engine (quiz.Progress).

/** How one skill has gone, rating by rating. */
export interface Tally {
  /** Signed differences from the truth: steps, or shares of the height for the neutral plane. */
  off: number[]
  /** Errors, 0 to 1, in the order given. */
  errors: number[]
}

export type OwnRecord = ReadonlyMap<Skill, Tally>

/** Fewer ratings than this say nothing of a lean. Chosen by us. */
export const enough = 5

export function recordOf(answers: readonly Answered[]): OwnRecord {
  const record = new Map<Skill, Tally>()
  for (const { verdict } of answers) {
    for (const part of verdict.parts) {
      const skill = skillOf(part)
      if (!skill) continue
      const tally = record.get(skill) ?? { off: [], errors: [] }
      record.set(skill, tally)
      tally.errors.push(part.error)
      const off = offBy(part)
      if (off !== undefined) tally.off.push(off)
    }
  }
  return record
}

function offBy(part: Part): number | undefined {
  if (part.given.level !== undefined) return part.steps ?? 0
  const truth = part.truth[0]?.plane
  return part.given.plane === undefined || truth === undefined ? undefined : part.given.plane - truth
}
