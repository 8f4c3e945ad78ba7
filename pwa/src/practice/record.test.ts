import { expect, test } from 'vitest'
import type { ClassRef, QuizEvent } from '../wire.gen'
import { answersOf, trialsOf, type Answered } from './record'

const answer = (family: string, given?: Omit<ClassRef, 'id' | 'scene'>) =>
  ({ kind: 'answer', t_client: 1, body: { answer: { family }, verdict: {}, ...(given && { class: { id: 'c', scene: 's', ...given } }) } }) as unknown as QuizEvent

test('what was answered in a class counts for the owner of the phone; a rehearsal and the second person do not', () => {
  const events = [answer('drill'), answer('class', { place: 'a' }), answer('second', { place: 'b' }), answer('rehearsed', { place: 'a', rehearsal: true })]
  expect(answersOf(events).map(({ answer: { family } }) => family)).toEqual(['drill', 'class'])
})

test('spacing learns nothing from a scene that an instructor sketched', () => {
  const one = (family: string, own?: object) => ({ t: 5, answer: { family, ...(own && { own }) }, verdict: { parts: [{ error: 0.5 }] } }) as unknown as Answered
  expect(trialsOf([one('one-door'), one('own', { title: 'The old bungalow' })])).toEqual([{ family: 'one-door', t: 5, error: 0.5 }])
})
