import type { Item, Reply } from '../../wire.gen'

/** One person's answers to an item until they are committed, in a drill or in a class. */
export interface Answering {
  replies: readonly Reply[]
  confidence: number | undefined
  committing: boolean
  reply(reply: Reply): void
  beSure(confidence: number): void
  commit(): Promise<void>
}

/** Whether to ask how sure one is: wherever a choice was made. Who could not tell is sure of nothing. */
export function asksConfidence(item: Item, replies: readonly Reply[]): boolean {
  return item.question.asks.some(({ id, choice }) => choice && replies.some(({ ask, unsure }) => ask === id && !unsure))
}
