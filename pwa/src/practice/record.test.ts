import { expect, test } from 'vitest'
import type { ClassRef, QuizEvent } from '../wire.gen'
import { answersOf } from './record'

const answer = (family: string, given?: Omit<ClassRef, 'id' | 'scene'>) =>
  ({ kind: 'answer', t_client: 1, body: { answer: { family }, verdict: {}, ...(given && { class: { id: 'c', scene: 's', ...given } }) } }) as unknown as QuizEvent

test('what was answered in a class counts for the owner of the phone; a rehearsal and the second person do not', () => {
  const events = [answer('drill'), answer('class', { place: 'a' }), answer('second', { place: 'b' }), answer('rehearsed', { place: 'a', rehearsal: true })]
  expect(answersOf(events).map(({ answer: { family } }) => family)).toEqual(['drill', 'class'])
})
