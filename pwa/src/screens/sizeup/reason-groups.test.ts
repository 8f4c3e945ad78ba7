import { expect, test } from 'vitest'
import type { Evidence } from '../../wire.gen'
import { byAnswer } from './reason-groups'

const reason = (rule: string, answer?: string): Evidence =>
  ({ rule, text: rule, weight: 1, source: 'common_practice', ...(answer ? { for: answer } : {}) }) as Evidence

test('reasons stand under the answer they speak on, heaviest first', () => {
  const groups = byAnswer([reason('a', 'flashover'), reason('b', 'ventilation_limited'), reason('c', 'flashover')])
  expect(groups.map(({ answer, evidence }) => [answer, evidence.map(({ rule }) => rule)])).toEqual([
    ['flashover', ['a', 'c']],
    ['ventilation-limited', ['b']],
  ])
})

test('where the seat is stands last, as it is another question', () => {
  const groups = byAnswer([reason('a', 'nearest'), reason('b', 'decay')])
  expect(groups.map(({ answer }) => answer)).toEqual(['decay', 'the opening nearest the seat'])
})

test('an answer that is a sentence already is kept, and none at all is no group name', () => {
  expect(byAnswer([reason('a', 'lack of air')])[0]!.answer).toBe('lack of air')
  expect(byAnswer([reason('a')])[0]!.answer).toBeUndefined()
})
