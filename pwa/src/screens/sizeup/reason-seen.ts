import { sizeUp } from '../../words/size-up'
import { lowerFirst } from '../../words/sentence'
import { trade } from '../../words/trade'
import type { Evidence } from '../../wire.gen'
import type { Rating } from './looks'
import { ratedWords } from './rated-words'

/** What was seen that a reason rests on: "Front door: velocity pushed, darkness middle"; of the whole building the cues, and what was counted. */
export function seenFor(evidence: Pick<Evidence, 'at' | 'cues' | 'open' | 'shut'>, ratings: Record<string, Rating>, nameOf: (id: string) => string): string {
  const { at = [], cues = [] } = evidence
  const [first] = at
  if (!first) return ofTheBuilding(evidence, nameOf)
  const seen = cues.map((cue) => ratedWords(ratings[first] ?? {}, cue)).filter(Boolean)
  const where = places(at, nameOf)
  return seen.length > 0 ? `${where}: ${seen.join(', ')}` : where
}

/** "The building as a whole: density. Open: front door. Shut: window and 2 more" */
function ofTheBuilding({ cues = [], open = [], shut = [] }: Pick<Evidence, 'cues' | 'open' | 'shut'>, nameOf: (id: string) => string): string {
  const whole = [sizeUp.wholeBuilding, cues.map((cue) => lowerFirst(trade.cues[cue])).join(', ')].filter(Boolean).join(': ')
  const counted = [
    ...(open.length > 0 ? [sizeUp.standOpen(lowerFirst(places(open, nameOf)))] : []),
    ...(shut.length > 0 ? [sizeUp.standShut(lowerFirst(places(shut, nameOf)))] : []),
  ]
  return [whole, ...counted].join('. ')
}

/** One opening or two by name, of more the first. */
function places([first, ...others]: readonly string[], nameOf: (id: string) => string): string {
  if (first === undefined) return ''
  if (others.length > 1) return sizeUp.andMore(nameOf(first), others.length)
  return [nameOf(first), ...others.map((id) => lowerFirst(nameOf(id)))].join(` ${sizeUp.and} `)
}
