import { expect, test } from 'vitest'
import type { Event } from '../../wire.gen'
import { happened } from './happened'

const event = (t_s: number, kind: string, where: string, cause = ''): Event => ({ t_s, kind, where, cause })

test('a line holds when, what, where and why', () => {
  const cause = 'The fire had been short of air.'
  expect(happened([event(85, 'Flashover', 'upper_left', cause)])).toEqual([{ tS: 85, what: 'Flashover', where: 'upper left', cause }])
})

test('one event in two rooms is one line; the same kind later is another', () => {
  const lines = happened([event(60, 'Flashover', 'living_room'), event(64, 'Flashover', 'hall'), event(200, 'Flashover', 'hall')])
  expect(lines.map(({ tS, where }) => [tS, where])).toEqual([[60, 'living room, hall'], [200, 'hall']])
})
