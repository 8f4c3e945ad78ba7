import { useRef, useState } from 'preact/hooks'
import { keepDraft, keptDraft } from '../../class/draft'
import { store } from '../../local/store'
import type { Answer, ClassRef, Item, Own, Reply } from '../../wire.gen'
import { engine } from '../../worker/client'
import type { Answering } from '../drill/answering'

/** The answers of one person to one scene of a class. */
export interface ClassAnswering extends Answering {
  failed: boolean
}

/** Holds the answers while they are given, and hands them to the device's own history when they are committed. */
export function useAnswering(item: Item, own: Own | undefined, where: ClassRef): ClassAnswering {
  const kept = useRef(keptDraft(where))
  const [replies, setReplies] = useState<readonly Reply[]>(kept.current?.replies ?? [])
  const [confidence, setConfidence] = useState(kept.current?.confidence)
  const [state, setState] = useState<'open' | 'committing' | 'failed'>('open')
  const began = useRef(performance.now())

  const hold = (next: readonly Reply[], sure = confidence) => {
    setReplies(next)
    setConfidence(sure)
    keepDraft(where, { replies: [...next], confidence: sure })
  }
  const commit = async () => {
    setState('committing')
    try {
      await record(answerOf(item, own, replies, confidence, performance.now() - began.current), where)
      keepDraft(where, undefined)
    } catch (error) {
      console.warn('commit:', error)
      setState('failed')
    }
  }
  return {
    replies,
    confidence,
    committing: state === 'committing',
    failed: state === 'failed',
    reply: (given) => hold([...replies.filter(({ ask }) => ask !== given.ask), given]),
    beSure: (sure) => hold(replies, sure),
    commit,
  }
}

/** Scores an answer and writes both to the disk; the sync takes it to the class. */
async function record(answer: Answer, where: ClassRef): Promise<void> {
  const verdict = await engine.score(answer)
  await (await store()).record('answer', verdict.engine, { answer, verdict, class: where })
}

function answerOf(item: Item, own: Own | undefined, replies: readonly Reply[], confidence: number | undefined, tookMS: number): Answer {
  const { v, engine: version, content, family, seed, question } = item
  const inOrder = question.asks.map(({ id }) => replies.find(({ ask }) => ask === id)!)
  const took_s = Math.round(tookMS / 100) / 10
  return { v, engine: version, content, family, seed, ...(own && { own }), replies: inOrder, ...(confidence !== undefined && { confidence }), took_s }
}
