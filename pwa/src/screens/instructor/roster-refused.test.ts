import { expect, test } from 'vitest'
import { Refused } from '../../class/ask'
import { desk } from '../../words/class-desk'
import { desk as spanish } from '../../words/es/class-desk'
import { rosterRefused } from './roster-refused'

const at = (where: string, code?: string) => new Refused(400, `${where} has the call sign of line 2 again: give each person their own`, { where, code })

test('a line of a table is said by its number and by what is wrong in it where the server’s own sentence is in another language', () => {
  expect(rosterRefused(at('line 4', 'table_sign_again'), 'es')).toBe(desk.lineSays(4, desk.lineRefused['table_sign_again']!))
  expect(rosterRefused(at('line 4', 'table_sign_again'), 'en')).toBeUndefined()
  expect(rosterRefused(at('line 4', 'of tomorrow'), 'es')).toBeUndefined()
  expect(Object.keys(spanish.lineRefused)).toEqual(Object.keys(desk.lineRefused))
})

test('a place of the list is counted as people count, in any language', () => {
  for (const on of ['en', 'es'] as const) expect(rosterRefused(at('seats[0].call_sign'), on)).toBe(desk.seatRefused(1))
})

test('anything else is left to the usual words', () => {
  expect(rosterRefused(at('title'), 'es')).toBeUndefined()
  expect(rosterRefused(new Error('line 4'), 'es')).toBeUndefined()
})
