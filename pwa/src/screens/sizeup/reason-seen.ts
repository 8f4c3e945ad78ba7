import { sizeUp } from '../../words/size-up'
import { lowerFirst } from '../../words/sentence'
import { trade } from '../../words/trade'
import type { Evidence } from '../../wire.gen'
import type { Rating } from './looks'
import { ratedWords } from './rated-words'

/** What was seen that a reason rests on: "Front door: velocity pushed, darkness middle"; of the whole building the cues alone. */
export function seenFor({ at = [], cues = [] }: Pick<Evidence, 'at' | 'cues'>, ratings: Record<string, Rating>, nameOf: (id: string) => string): string {
  const [first, ...others] = at
  if (!first) return [sizeUp.wholeBuilding, cues.map((cue) => lowerFirst(trade.cues[cue])).join(', ')].filter(Boolean).join(': ')
  const seen = cues.map((cue) => ratedWords(ratings[first] ?? {}, cue)).filter(Boolean)
  const where = others.length > 1 ? sizeUp.andMore(nameOf(first), others.length) : [nameOf(first), ...others.map((id) => lowerFirst(nameOf(id)))].join(` ${sizeUp.and} `)
  return seen.length > 0 ? `${where}: ${seen.join(', ')}` : where
}
