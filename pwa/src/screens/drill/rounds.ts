import { ordinalCues, type OrdinalCue } from '../../words/scales'

export interface Round {
  cue: OrdinalCue
  level: number
}

// Four swatches of each cue: some three minutes at ten seconds each. Chosen by us.
const each = 4
const levels = 5

/** One cue after the other, each with levels that differ. */
export function rounds(below: (n: number) => number): Round[] {
  return ordinalCues.flatMap((cue) => {
    const left = Array.from({ length: levels }, (_, level) => level)
    return Array.from({ length: each }, () => ({ cue, level: left.splice(below(left.length), 1)[0]! }))
  })
}
