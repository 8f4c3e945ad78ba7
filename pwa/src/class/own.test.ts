import { expect, test } from 'vitest'
import type { AnswerBody, QuizEvent } from '../wire.gen'
import { ownAnswers, replyTo } from './own'

const event = (body: unknown, kind: QuizEvent['kind'] = 'answer') => ({ kind, body }) as QuizEvent
const answer = (id: string, scene: string, place: string, level: number) =>
  ({ answer: { replies: [{ ask: 'density', level }] }, verdict: {}, class: { id, scene, place } }) as unknown as AnswerBody

test('a phone finds what each of its people committed to each scene of one class', () => {
  const own = ownAnswers(
    [
      event({ answer: { replies: [] }, verdict: {} }), // a drill's
      event({ text: 'a note' }, 'note'),
      event(answer('c1', 's1', 'a', 1)),
      event(answer('c1', 's1', 'b', 2)),
      event(answer('c2', 's1', 'a', 3)),
    ],
    'c1',
  )
  expect(replyTo(own.of('s1', 'a'), 'density')).toEqual({ ask: 'density', level: 1 })
  expect(replyTo(own.of('s1', 'b'), 'density')).toEqual({ ask: 'density', level: 2 })
  expect(own.of('s2', 'a')).toBeUndefined()
})

test('of two answers to one scene the first counts, as on the server', () => {
  const own = ownAnswers([event(answer('c1', 's1', 'a', 1)), event(answer('c1', 's1', 'a', 4))], 'c1')
  expect(replyTo(own.of('s1', 'a'), 'density')?.level).toBe(1)
})
