import type { AnswerBody, AskKind, Part, QuizEvent } from '../../wire.gen'
import type { OrdinalCue } from '../../words/scales'

// One's own record, counted from the verdicts that the engine gave. Nothing is
// scored here: steps, errors and rightness come with each verdict.

/** How one kind of rating has gone. */
export interface Tally {
  /** Signed differences from the truth, one a rating: steps, or shares of the height for the neutral plane. */
  off: number[]
  right: number
  cannotTell: number
  count: number
}

export interface OwnRecord {
  levels: Map<OrdinalCue, Tally>
  plane: Tally
  calls: Map<Exclude<AskKind, 'level' | 'plane'>, Tally>
  /** Every call made with a confidence. */
  sure: { confidence: number; right: boolean }[]
}

/** Fewer ratings than this say nothing of a lean. Chosen by us. */
export const enough = 5

export function answersOf(events: readonly QuizEvent[]): AnswerBody[] {
  return events.filter(({ kind }) => kind === 'answer').map(({ body }) => body as AnswerBody)
}

export function recordOf(answers: readonly AnswerBody[]): OwnRecord {
  const record: OwnRecord = { levels: new Map(), plane: newTally(), calls: new Map(), sure: [] }
  for (const { answer, verdict } of answers) {
    verdict.parts.forEach((part) => count(record, part))
    if (answer.confidence !== undefined) {
      record.sure.push({ confidence: answer.confidence, right: verdict.parts.every(({ right }) => right) })
    }
  }
  return record
}

function count(record: OwnRecord, part: Part): void {
  const tally = tallyFor(record, part)
  if (!tally) return
  tally.count++
  if (part.given.unsure) tally.cannotTell++
  if (part.right) tally.right++
  const off = offBy(part)
  if (off !== undefined) tally.off.push(off)
}

function tallyFor(record: OwnRecord, part: Part): Tally | undefined {
  const [truth] = part.truth
  if (truth?.level !== undefined) return entry(record.levels, cueOfAsk(part.ask))
  if (truth?.plane !== undefined) return record.plane
  if (truth?.flow) return entry(record.calls, 'flow')
  if (truth?.stage) return entry(record.calls, 'stage')
  if (truth?.regime) return entry(record.calls, 'regime')
  return truth?.change ? entry(record.calls, 'change') : undefined
}

function entry<K>(map: Map<K, Tally>, key: K): Tally {
  const found = map.get(key) ?? newTally()
  map.set(key, found)
  return found
}

/** An ask is named by its kind, its cue and its opening: "level:velocity@door" (quiz/item). */
function cueOfAsk(ask: string): OrdinalCue {
  return /:(\w+)/.exec(ask)?.[1] as OrdinalCue
}

function offBy(part: Part): number | undefined {
  if (part.given.level !== undefined) return part.steps ?? 0
  const truth = part.truth[0]?.plane
  return part.given.plane === undefined || truth === undefined ? undefined : part.given.plane - truth
}

function newTally(): Tally {
  return { off: [], right: 0, cannotTell: 0, count: 0 }
}

export function mean(list: readonly number[]): number {
  return list.reduce((sum, one) => sum + one, 0) / list.length
}
