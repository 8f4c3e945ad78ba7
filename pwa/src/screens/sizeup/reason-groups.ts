import { lowerFirst } from '../../words/sentence'
import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import type { Evidence } from '../../wire.gen'

/** Reasons that speak on one answer; `answer` is undefined where the engine did not say on which. */
export interface ReasonGroup {
  answer: string | undefined
  evidence: Evidence[]
}

/** Reasons by the answer that they speak on: the group with the heaviest reason first, where the seat is last. */
export function byAnswer(evidence: readonly Evidence[]): ReasonGroup[] {
  const groups: ReasonGroup[] = []
  for (const one of evidence) {
    const answer = answerOf(one)
    const found = groups.find((group) => group.answer === answer)
    if (found) found.evidence.push(one)
    else groups.push({ answer, evidence: [one] })
  }
  return groups.toSorted((a, b) => Number(a.answer === sizeUp.nearestOpening) - Number(b.answer === sizeUp.nearestOpening))
}

const names: Record<string, string> = {
  ...trade.stages,
  ...trade.regimes,
  ...trade.hazards,
  nearest: sizeUp.nearestOpening,
}

/** What a reason speaks on, in words: a stage, what limits the fire, or a rapid event. */
export function answerOf(one: Evidence): string | undefined {
  return one.for ? lowerFirst(names[one.for] ?? one.for.replaceAll('_', ' ')) : undefined
}
