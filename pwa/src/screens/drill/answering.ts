import type { Reply } from '../../wire.gen'

/** One person's answers to an item until they are committed, in a drill or in a class. */
export interface Answering {
  replies: readonly Reply[]
  confidence: number | undefined
  committing: boolean
  reply(reply: Reply): void
  beSure(confidence: number): void
  commit(): Promise<void>
}
