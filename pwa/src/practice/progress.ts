import type { Progress } from '../wire.gen'
import { engine } from '../worker/client'
import { attemptOf, type Answered } from './record'

/** What a record adds up to, as the engine says it. Answers of families that are no more count for nothing. */
export async function progressOf(answers: readonly Answered[]): Promise<Progress> {
  const kinds = new Map((await engine.families()).map(({ id, kind }) => [id, kind]))
  const attempts = answers.flatMap((one) => {
    const kind = one.answer.own?.kind ?? kinds.get(one.answer.family)
    return kind ? [attemptOf(one, kind)] : []
  })
  return engine.progress(attempts)
}
