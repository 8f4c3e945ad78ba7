import { useEffect, useState } from 'preact/hooks'
import type { AnswerBody, Item, Own, Verdict } from '../../wire.gen'
import { engine } from '../../worker/client'
import { Explained } from '../drill/reveal'

interface WhyProps {
  item: Item
  own: Own | undefined
  answer: AnswerBody | undefined
  /** What each level looks like stands beside its rail already. */
  shown?: boolean
}

/** Why it was so, with the rule and its source: from one's own verdict, or from one that claims nothing. */
export function Why({ item, own, answer, shown = false }: WhyProps) {
  const [verdict, setVerdict] = useState<Verdict | undefined>(answer?.verdict)
  useEffect(() => {
    if (!verdict) void explain(item, own).then(setVerdict, (error: unknown) => console.warn('why:', error))
  }, [item])
  return verdict ? <Explained verdict={verdict} shown={shown} /> : null
}

function explain({ v, engine: version, content, family, seed, question }: Item, own: Own | undefined): Promise<Verdict> {
  const replies = question.asks.map(({ id }) => ({ ask: id, unsure: true }))
  return engine.score({ v, engine: version, content, family, seed, ...(own && { own }), replies, took_s: 0 })
}
