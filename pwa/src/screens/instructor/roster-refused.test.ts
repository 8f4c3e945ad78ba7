import { expect, test } from 'vitest'
import { Refused } from '../../class/ask'
import { desk } from '../../words/class-desk'
import { rosterRefused } from './roster-refused'

const at = (where: string) => new Refused(400, `${where} has the call sign of line 2 again: give each person their own`, { where })

test('a line of a table is said by its number where the server’s own sentence is in another language', () => {
  expect(rosterRefused(at('line 4'), 'es')).toBe(desk.lineRefused(4))
  expect(rosterRefused(at('line 4'), 'en')).toBeUndefined()
})

test('a place of the list is counted as people count, in any language', () => {
  for (const on of ['en', 'es'] as const) expect(rosterRefused(at('seats[0].call_sign'), on)).toBe(desk.seatRefused(1))
})

test('anything else is left to the usual words', () => {
  expect(rosterRefused(at('title'), 'es')).toBeUndefined()
  expect(rosterRefused(new Error('line 4'), 'es')).toBeUndefined()
})
