import { useEffect, useState } from 'preact/hooks'
import type { AnswerBody, Item, Verdict } from '../../wire.gen'
import { engine } from '../../worker/client'
import { Explained } from '../drill/reveal'

/** Why it was so, with the rule and its source: from one's own verdict, or from one that claims nothing. */
export function Why({ item, answer }: { item: Item; answer: AnswerBody | undefined }) {
  const [verdict, setVerdict] = useState<Verdict | undefined>(answer?.verdict)
  useEffect(() => {
    if (!verdict) void explain(item).then(setVerdict, (error: unknown) => console.warn('why:', error))
  }, [item])
  return verdict ? <Explained verdict={verdict} /> : null
}

function explain({ v, engine: version, content, family, seed, question }: Item): Promise<Verdict> {
  const replies = question.asks.map(({ id }) => ({ ask: id, unsure: true }))
  return engine.score({ v, engine: version, content, family, seed, replies, took_s: 0 })
}
