import type { AnswerBody, Attempt, Part, QuizEvent, Skill } from '../wire.gen'
import type { Trial } from './memory'

// The device's own history as practice reads it: what the engine's verdicts say,
// and nothing scored anew.

/** An answer with its verdict and the time it was written down at. */
export interface Answered extends AnswerBody {
  t: number
}

/** One's own answers: none of a rehearsal, and none of whoever shared this phone in a class. */
export function answersOf(events: readonly QuizEvent[]): Answered[] {
  return events
    .filter(({ kind, body }) => kind === 'answer' && isOwn(body as AnswerBody))
    .map(({ body, t_client }) => ({ ...(body as AnswerBody), t: t_client }))
}

/** The owner of a phone sits at its first place (quiz/session, FirstPlace). */
const isOwn = ({ class: given }: AnswerBody) => !given || (given.place === 'a' && !given.rehearsal)

/** What the engine adds up (quiz.Attempt). */
export function attemptOf({ answer, verdict, t }: Answered, kind: Attempt['kind']): Attempt {
  const { family, confidence, took_s } = answer
  const { parts, brier, overlap } = verdict
  const more = { ...(confidence !== undefined && { confidence }), ...(brier !== undefined && { brier }), ...(overlap !== undefined && { overlap }) }
  return { t_client: t, family, kind, parts, took_s, ...more }
}

/** What spacing learns from. A scene that an instructor sketched belongs to no family and never comes back. */
export function trialsOf(answers: readonly Answered[]): Trial[] {
  return answers
    .filter(({ answer }) => !answer.own)
    .map(({ answer, verdict: { parts }, t }) => ({ family: answer.family, t, error: parts.reduce((sum, { error }) => sum + error, 0) / Math.max(1, parts.length) }))
}

const named = {
  flow: 'flow',
  plane: 'neutral_plane',
  stage: 'stage',
  regime: 'regime',
  change: 'change',
  opening: 'nearest',
  trend: 'trend',
  pick: 'pair',
  moment: 'report',
} as const satisfies Record<string, Skill>

/** The skill that a part of an answer shows; undefined for one of a version that did not say its kind. */
export function skillOf({ kind, cue }: Part): Skill | undefined {
  if (kind === 'level') return cue as Skill | undefined
  return kind && kind in named ? named[kind as keyof typeof named] : undefined
}

/** The skills that each family was seen to ask for. */
export function skillsByFamily(answers: readonly Answered[]): Map<string, Set<Skill>> {
  const found = new Map<string, Set<Skill>>()
  for (const { answer, verdict } of answers) {
    const skills = found.get(answer.family) ?? new Set()
    found.set(answer.family, skills)
    for (const part of verdict.parts) {
      const skill = skillOf(part)
      if (skill) skills.add(skill)
    }
  }
  return found
}
