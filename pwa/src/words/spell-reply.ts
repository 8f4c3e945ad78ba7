import { spoken, spokenWithin } from './names'
import { drill } from './drill'
import { trade } from './trade'
import { levelName, type OrdinalCue } from './scales'
import type { Ask, QuizChange, Reply } from '../wire.gen'

/** An answer in words. */
export function spellReply(ask: Ask, reply: Reply): string {
  if (reply.unsure) return trade.cannotTell
  if (reply.level !== undefined) return levelName(ask.cue as OrdinalCue, reply.level)
  if (reply.plane !== undefined) return trade.planeAt(reply.plane)
  if (reply.flow) return trade.flows[reply.flow]
  if (reply.stage) return trade.stages[reply.stage]
  if (reply.regime) return trade.regimes[reply.regime]
  if (reply.change) return changeWords(ask)[reply.change]
  if (reply.opening) return spoken(reply.opening)
  if (reply.trend) return drill.trends[reply.trend]
  if (reply.pick) return drill.picks[reply.pick]
  if (reply.at_s !== undefined) return drill.reportedAt(sinceWatched(ask, reply.at_s))
  return reply.quiet ? drill.quiet : ''
}

/** What was so, in words: of a moment from when on it showed, and what came. */
export function spellTruth(ask: Ask, reply: Reply): string {
  if (ask.kind !== 'moment') return spellReply(ask, reply)
  if (reply.at_s === undefined) return drill.signals.correct_rejection
  const came = reply.event_s === undefined ? drill.noEvent : drill.eventAt(sinceWatched(ask, reply.event_s))
  return `${drill.showedAt(sinceWatched(ask, reply.at_s))} ${came}`
}

/** A time of the scene as whoever watched it counts: in whole seconds since it began to run. */
export const sinceWatched = ({ watch }: Ask, t: number): number => Math.round(t - (watch?.from_s ?? 0))

/** A neutral plane moves up or down; everything else is more or less. */
export function changeWords(ask: Ask): Record<QuizChange, string> {
  return ask.cue === 'neutral_plane' ? trade.planeChanges : trade.changes
}

/** What a question is about, with its opening where the item asks the same of several. */
export function askName(ask: Ask, asks: readonly Ask[]): string {
  const name = subject(ask)
  const alike = asks.filter((one) => subject(one) === name).length > 1
  return alike && ask.opening ? `${name}, ${spokenWithin(ask.opening)}` : name
}

function subject(ask: Ask): string {
  if (ask.kind === 'change' || ask.kind === 'level') return ask.cue ? trade.cues[ask.cue] : ask.text
  const { flow, neutral_plane: plane } = trade.cues
  return { flow, plane, stage: trade.stage, regime: trade.regime, ...drill.subjects }[ask.kind]
}
