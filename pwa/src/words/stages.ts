import type { Finding, Stage } from '../wire.gen'
import { capital, lowerFirst } from './sentence'
import { sizeUp } from './size-up'
import { trade } from './trade'

// The stages that a reading names, in words: on the screen, in the report and in
// the Log alike.

export type StagesRead = Pick<Finding, 'stage' | 'set'>

// A stage is named first when it weighs at least this share of the heaviest one;
// the others of the set are told as not ruled out. Chosen by us.
const worthNaming = 0.5
/** More stages than this are not a call: they are told as not told apart. Chosen by us. */
const mostNamed = 3
/** Nothing is named while more than this share could not be laid on any stage. Chosen by us. */
const mostUntold = 0.5

/** Whether the signs tell the stages apart at all. */
export function isTold({ stage, set }: StagesRead): boolean {
  return stage.undetermined < mostUntold && set.some((one) => one !== 'undetermined')
}

export interface Named {
  /** The heaviest stages, heaviest first. */
  first: Stage[]
  /** The rest of the set, heaviest first. */
  rest: Stage[]
}

/** The stages of the set by their share; none where too little was seen. */
export function namedStages(read: StagesRead): Named {
  if (!isTold(read)) return { first: [], rest: [] }
  const order = read.set.filter((one) => one !== 'undetermined').toSorted((a, b) => read.stage[b] - read.stage[a])
  const least = worthNaming * read.stage[order[0]!]
  return { first: order.filter((one) => read.stage[one] >= least), rest: order.filter((one) => read.stage[one] < least) }
}

/** The first line of a reading: "Pre-flashover or fully developed". */
export function spellFirst(read: StagesRead): string {
  const { first } = namedStages(read)
  if (first.length === 0) return sizeUp.tooLittle
  return capital(first.length > mostNamed ? sizeUp.notToldApart(spellList(first, sizeUp.and)) : spellList(first, sizeUp.or))
}

/** What a reading leaves standing beside its first line: "ventilation-limited decay not ruled out". */
export function spellRest(read: StagesRead): string {
  const { rest } = namedStages(read)
  return rest.length ? sizeUp.notRuledOut(spellList(rest, sizeUp.and)) : ''
}

/** Both in one line: "Pre-flashover or fully developed; ventilation-limited decay not ruled out". */
export function spellStages(read: StagesRead): string {
  const rest = spellRest(read)
  return rest ? `${spellFirst(read)}; ${rest}` : spellFirst(read)
}

/** The first line calls something; else it says that nothing can be called. */
export function isCall(read: StagesRead): boolean {
  const { first } = namedStages(read)
  return first.length > 0 && first.length <= mostNamed
}

function spellList(stages: readonly Stage[], last: string): string {
  return spellNames(stages.map((one) => lowerFirst(trade.stages[one])), last)
}

/** "a, b or c". */
export function spellNames(names: readonly string[], last: string): string {
  if (names.length < 2) return names.join('')
  return `${names.slice(0, -1).join(', ')} ${last} ${names.at(-1)}`
}

/** A share as a person reads it: what is small is not nothing. */
export function spellShare(share: number): string {
  if (share < 0.01) return sizeUp.underOne
  return `${Math.round(share * 100)} %`
}
