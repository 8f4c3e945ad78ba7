import { words } from '../../words/en'
import { sizeUp } from '../../words/en/size-up'
import { trade } from '../../words/en/trade'
import { levelName, ordinalCues } from '../../words/scales'
import { SIDE_WORDS, type Finding, type Stage } from '../../wire.gen'
import { seen, type LookAt, type Rating } from './looks'
import { outsides, spell, storeysOf, type Outside, type Sketch } from './sketch'

// A reading in words: one line for the screen, and the whole as an initial radio
// report. It tells conditions as seen; it names no action.

// A stage is named when it weighs at least this share of the heaviest one; the
// others that were not ruled out are counted. Chosen by us.
const worthNaming = 0.25
/** A list of more stages than this says nothing. Chosen by us. */
const mostNamed = 3

/** The stages to name, heaviest first; none where too little was seen. */
export function leading({ stage, set }: Pick<Finding, 'stage' | 'set'>): Stage[] {
  const order = set.toSorted((a, b) => stage[b] - stage[a])
  const [first] = order
  if (!first || first === 'undetermined' || stage[first] < stage.undetermined) return []
  const worthy = order.filter((one) => one !== 'undetermined' && stage[one] >= worthNaming * stage[first])
  return worthy.length > mostNamed ? [] : worthy
}

export function named(finding: Finding): boolean {
  return leading(finding).length > 0
}

/** The stages that the signs fit, as "Growth or pre-flashover, 2 more not ruled out". */
export function spellStages(finding: Pick<Finding, 'stage' | 'set'>): string {
  const stages = leading(finding)
  if (stages.length === 0) return sizeUp.tooLittle
  const [first, ...rest] = stages.map((stage) => trade.stages[stage])
  const others = finding.set.filter((stage) => stage !== 'undetermined').length - stages.length
  const said = [first, ...rest.map((one) => one.toLowerCase())].join(` ${sizeUp.or} `)
  return others > 0 ? `${said}, ${sizeUp.notRuledOut(others)}` : said
}

/** An opening or compartment of the path as a person reads it. */
export function spellPath(path: readonly string[]): string {
  const steps = path.filter((id, n) => id !== path[n - 1]) // in and out by one opening is one step
  return steps.map(spell).join(' → ')
}

/** The initial radio report. It begins and ends with the training banner. */
export function radioReport(callSign: string, sketch: Sketch, look: LookAt, finding: Finding): string {
  const said = sizeUp.report
  const storeys = storeysOf(sketch.plan).length
  const lines = [
    words.caution.banner,
    said.unit(callSign),
    said.building(said.storeys[storeys] ?? `${storeys}-storey`, constructionOf(sketch)),
    ...conditions(sketch, look),
    ...context(look),
    ...consistent(finding),
    ...unseen(sketch, look),
    words.caution.banner,
  ]
  return lines.join('\n')
}

function constructionOf({ construction, name }: Sketch): string {
  const known = construction && sizeUp.constructions[construction as keyof typeof sizeUp.constructions]
  return known ? `${name}, ${known}` : name
}

function conditions(sketch: Sketch, look: LookAt): string[] {
  return outsides(sketch)
    .filter(({ id }) => seen(look.ratings[id]) > 0)
    .map((one) => `${placeOf(one, look.ratings[one.id]!)} ${showing(look.ratings[one.id]!)}.`)
}

function placeOf(one: Outside, rating: Rating): string {
  const side = one.side ? trade.sides[one.side] : trade.roof
  const state = rating.state && rating.state !== 'unknown' ? `, ${trade.states[rating.state].toLowerCase()}` : ''
  return sizeUp.report.seenFrom(side, one.name.toLowerCase(), state)
}

function showing(rating: Rating): string {
  const parts: string[] = []
  if (rating.flow) parts.push(trade.flows[rating.flow].toLowerCase())
  for (const cue of ordinalCues) {
    const level = rating[cue]
    if (level !== undefined) parts.push(`${trade.cues[cue].toLowerCase()} ${levelName(cue, level).toLowerCase()}`)
  }
  if (rating.churning !== undefined) parts.push(sizeUp.churning[rating.churning ? 'yes' : 'no'].toLowerCase())
  if (rating.pulsing) parts.push(sizeUp.pulsing.yes.toLowerCase())
  if (rating.vanishes) parts.push(sizeUp.vanishes.yes.toLowerCase())
  if (rating.neutral_plane !== undefined) parts.push(sizeUp.report.neutral(rating.neutral_plane))
  if (rating.flame && rating.flame !== 'none') parts.push(trade.flames[rating.flame].toLowerCase())
  return parts.join(', ') || sizeUp.report.nothing
}

function context({ windFrom, windMS, water }: LookAt): string[] {
  return [
    ...(windFrom && windMS ? [sizeUp.report.wind(trade.sides[windFrom])] : []),
    ...(water ? [sizeUp.report.water] : []),
  ]
}

function consistent(finding: Finding): string[] {
  const stages = spellStages(finding)
  return [
    stages === sizeUp.tooLittle ? sizeUp.report.undetermined : sizeUp.report.consistent(stages.toLowerCase()),
    ...finding.hazards
      .filter(({ flagged }) => flagged)
      .map(({ event }) => sizeUp.report.hazard(trade.hazards[event].toLowerCase())),
    ...(finding.path.length > 0 ? [sizeUp.report.path(spellPath(finding.path))] : []),
  ]
}

/** Sides on which no opening was rated: what the report does not speak for. */
function unseen(sketch: Sketch, look: LookAt): string[] {
  const rated = new Set(outsides(sketch).filter(({ id }) => seen(look.ratings[id]) > 0).map(({ side }) => side))
  const missing = SIDE_WORDS.filter((side) => !rated.has(side)).map((side) => trade.sides[side])
  return missing.length ? [sizeUp.report.notSeen(missing.join(', '))] : []
}
