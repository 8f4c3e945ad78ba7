import { useEffect, useState } from 'preact/hooks'
import { changes, store } from '../local/store'
import type { AnswerBody, QuizEvent, Reply } from '../wire.gen'

// What was committed on this phone, read from the device's own history: it is
// there after a reload and with the server gone.

/** The answers given on this phone in one class. */
export interface OwnAnswers {
  of(scene: string, place: string): AnswerBody | undefined
}

export function ownAnswers(events: readonly QuizEvent[], id: string): OwnAnswers {
  const given = new Map<string, AnswerBody>()
  for (const { kind, body } of events) {
    const answer = body as AnswerBody
    if (kind !== 'answer' || answer.class?.id !== id) continue
    const key = `${answer.class.scene} ${answer.class.place}`
    if (!given.has(key)) given.set(key, answer) // the first one counts, as on the server
  }
  return { of: (scene, place) => given.get(`${scene} ${place}`) }
}

/** Follows this phone's answers; undefined until they have been read. */
export function useOwnAnswers(id: string): OwnAnswers | undefined {
  const [own, setOwn] = useState<OwnAnswers>()
  const change = changes.value
  useEffect(() => {
    let wanted = true
    store()
      .then(({ journal }) => journal.events())
      .then((events) => wanted && setOwn(ownAnswers(events, id)))
      .catch((error: unknown) => console.warn('own answers:', error))
    return () => void (wanted = false)
  }, [id, change])
  return own
}

/** What was replied to one question. */
export function replyTo(answer: AnswerBody | undefined, ask: string): Reply | undefined {
  return answer?.answer.replies.find((reply) => reply.ask === ask)
}
