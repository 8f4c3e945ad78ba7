import { spellReply } from '../words/spell-reply'
import { ordinalCues, type OrdinalCue } from '../words/scales'
import { FLOW_WORDS, PICK_WORDS, QUIZ_CHANGE_WORDS, REGIME_WORDS, STAGE_WORDS, TREND_WORDS, type Ask, type ClassAskSpread, type Reply } from '../wire.gen'
import { trade } from '../words/trade'

// The stops that the answers to one question can lie on, in the order in which
// the answer's own control shows them.

/** The stop of those who could not tell. */
export const unsure = 'unsure'

export interface Stop {
  key: string
  name: string
}

const quiet = 'quiet'

/** What a reply gives, as one word; the server's counts are by the same words (quiz/session, Value). */
export function valueOf(reply: Reply): string {
  if (reply.unsure) return unsure
  if (reply.quiet) return quiet
  if (reply.at_s !== undefined) return String(Math.round(reply.at_s))
  const given = Object.entries(reply).find(([field]) => field !== 'ask')
  return given ? String(given[1]) : unsure
}

/** The reply that gives one value. */
export function replyOf({ id, kind }: Ask, value: string): Reply {
  if (value === unsure) return { ask: id, unsure: true }
  if (value === quiet) return { ask: id, quiet: true }
  if (kind === 'moment') return { ask: id, at_s: Number(value) }
  return { ask: id, [kind]: kind === 'level' || kind === 'plane' ? Number(value) : value }
}

/** Every stop of a question's rail, "cannot tell" last. */
export function stopsOf({ ask, counts }: Pick<ClassAskSpread, 'ask' | 'counts'>): Stop[] {
  const values = inOrder[ask.kind] ?? counts.map(({ value }) => value)
  const named = values.map((key) => ({ key, name: spellReply(ask, replyOf(ask, key)) }))
  return [...named, { key: unsure, name: trade.cannotTell }]
}

const inOrder: Partial<Record<Ask['kind'], readonly string[]>> = {
  level: ['0', '1', '2', '3', '4'],
  flow: FLOW_WORDS,
  stage: STAGE_WORDS.filter((stage) => stage !== 'undetermined'),
  regime: REGIME_WORDS,
  change: QUIZ_CHANGE_WORDS,
  trend: TREND_WORDS,
  pick: PICK_WORDS,
}

/** A cue whose stops are drawn as swatches. */
export function swatchCue(ask: Ask): OrdinalCue | undefined {
  return ask.kind === 'level' ? ordinalCues.find((cue) => cue === ask.cue) : undefined
}
