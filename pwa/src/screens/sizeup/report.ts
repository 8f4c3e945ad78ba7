import { words } from '../../words/frame'
import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import { ordinalCues } from '../../words/scales'
import { lowerFirst } from '../../words/sentence'
import { isTold, spellStages } from '../../words/stages'
import { SIDE_WORDS, type Cue, type Finding } from '../../wire.gen'
import { seen, type LookAt, type Rating } from './looks'
import { spellPath } from './path-words'
import { ratedWords } from './rated-words'
import { outsides, storeysOf, type Outside, type Sketch } from './sketch'

// A reading as an initial radio report. It tells conditions as seen; it names no
// action.

/** The initial radio report. It begins and ends with the training banner. */
export function radioReport(callSign: string, sketch: Sketch, look: LookAt, finding: Finding): string {
  const lines = [
    words.caution.banner,
    sizeUp.report.unit(callSign),
    sizeUp.report.building(buildingOf(sketch)),
    ...conditions(sketch, look),
    ...context(look),
    ...consistent(finding),
    ...unseen(sketch, look),
    words.caution.banner,
  ]
  return lines.join('\n')
}

/** "Sketched house, two storeys, masonry"; a name that tells its storeys is not told them again. */
function buildingOf({ construction, name, plan }: Sketch): string {
  const storeys = storeysOf(plan).length
  const counted = /storey/i.test(name) ? [] : [sizeUp.report.storeys[storeys] ?? sizeUp.report.moreStoreys(storeys)]
  const known = construction && sizeUp.constructions[construction as keyof typeof sizeUp.constructions]
  return [name, ...counted, ...(known ? [lowerFirst(known)] : [])].join(', ')
}

function conditions(sketch: Sketch, look: LookAt): string[] {
  return outsides(sketch)
    .filter(({ id }) => seen(look.ratings[id]) > 0)
    .map((one) => `${placeOf(one, look.ratings[one.id]!)} ${showing(look.ratings[one.id]!)}.`)
}

function placeOf(one: Outside, rating: Rating): string {
  const state = rating.state && rating.state !== 'unknown' ? `, ${lowerFirst(trade.states[rating.state])}` : ''
  if (!one.side) return `${trade.roof}, ${lowerFirst(one.name)}${state}:`
  return sizeUp.report.seenFrom(trade.sides[one.side], lowerFirst(withoutSide(one)), state)
}

/** "Alpha window division 2", told after "Side Alpha", is "window, division 2". */
function withoutSide({ name, side }: Outside): string {
  const own = side ? `${trade.sides[side]} ` : ''
  return (name.startsWith(own) ? name.slice(own.length) : name).replace(' division', ', division')
}

/** What a report tells of an opening, in this order. */
const reported: readonly Cue[] = ['flow', ...ordinalCues, 'churning', 'pulsing', 'vanishes', 'neutral_plane', 'flame']

/** Of what is rare a report says only that it is there. */
const worthTelling = ({ pulsing, vanishes, flame }: Rating, cue: Cue): boolean =>
  ({ pulsing, vanishes, flame: flame !== 'none' } as Partial<Record<Cue, boolean | undefined>>)[cue] ?? true

function showing(rating: Rating): string {
  const parts = reported.filter((cue) => worthTelling(rating, cue)).map((cue) => ratedWords(rating, cue))
  return parts.filter(Boolean).join(', ') || sizeUp.report.nothing
}

function context({ windFrom, windMS, water }: LookAt): string[] {
  return [
    ...(windFrom && windMS ? [sizeUp.report.wind(trade.sides[windFrom])] : []),
    ...(water ? [sizeUp.report.water] : []),
  ]
}

function consistent(finding: Finding): string[] {
  return [
    isTold(finding) ? sizeUp.report.consistent(lowerFirst(spellStages(finding))) : sizeUp.report.undetermined,
    ...finding.hazards
      .filter(({ flagged }) => flagged)
      .map(({ event }) => sizeUp.report.hazard(lowerFirst(trade.hazards[event]))),
    ...(finding.path.length > 0 ? [sizeUp.report.path(spellPath(finding))] : []),
  ]
}

/** Sides on which no opening was rated: what the report does not speak for. */
function unseen(sketch: Sketch, look: LookAt): string[] {
  const rated = new Set(outsides(sketch).filter(({ id }) => seen(look.ratings[id]) > 0).map(({ side }) => side))
  const missing = SIDE_WORDS.filter((side) => !rated.has(side)).map((side) => trade.sides[side])
  return missing.length ? [sizeUp.report.notSeen(missing.join(', '))] : []
}
