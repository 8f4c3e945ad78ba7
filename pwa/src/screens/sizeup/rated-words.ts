import { hues, levelName } from '../../words/scales'
import { lowerFirst } from '../../words/sentence'
import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import type { Cue } from '../../wire.gen'
import type { Rating } from './looks'

/** What was seen of a cue, within a sentence; undefined where it was not. */
export function ratedWords(rating: Rating, cue: Cue): string | undefined {
  if (rating[cue] === undefined) return undefined
  return lowerFirst(spell(rating, cue))
}

function spell(rating: Rating, cue: Cue): string {
  switch (cue) {
    case 'flow':
      return trade.flows[rating.flow!]
    case 'colour':
      return `${trade.cues.colour} ${lowerFirst(hues.find(({ colour }) => colour === rating.colour)?.name ?? rating.colour!)}`
    case 'flame':
      return trade.flames[rating.flame!]
    case 'window':
      return `${trade.cues.window} ${lowerFirst(trade.glass[rating.window!])}`
    case 'neutral_plane':
      return sizeUp.report.neutral(rating.neutral_plane!)
    case 'churning':
    case 'pulsing':
    case 'vanishes':
      return sizeUp[cue][rating[cue] ? 'yes' : 'no']
    default:
      return `${trade.cues[cue]} ${lowerFirst(levelName(cue, rating[cue]!))}`
  }
}
