import { sizeUp } from '../../words/size-up'
import type { HazardFinding } from '../../wire.gen'

// The conditions of a rapid event come from the engine in words. Some of them
// tell what was seen, one that something was not looked for yet, and one that
// what was looked at gave no sign. They are shown apart, as they weigh apart.

const begins = (text: string, start: string) => text.toLowerCase().startsWith(start)

type Beginnings = Record<'noSignBegins' | 'unlookedBegins', string>

export type HazardStanding = 'flagged' | 'some_seen' | 'unlooked' | 'no_sign'

export interface HazardSaid {
  standing: HazardStanding
  seen: string[]
  /** What is no sign: what was not looked for, and that none was seen. */
  quiet: string[]
}

export function hazardSaid({ flagged, conditions }: HazardFinding, words: Beginnings = sizeUp): HazardSaid {
  const missing = conditions.filter((one) => begins(one, words.unlookedBegins))
  const quiet = [...missing, ...conditions.filter((one) => begins(one, words.noSignBegins))]
  const seen = conditions.filter((one) => !quiet.includes(one))
  if (flagged) return { standing: 'flagged', seen, quiet }
  if (seen.length) return { standing: 'some_seen', seen, quiet }
  return { standing: missing.length ? 'unlooked' : 'no_sign', seen, quiet }
}
