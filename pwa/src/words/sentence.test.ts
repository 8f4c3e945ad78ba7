import { expect, test } from 'vitest'
import { spoken, spokenWithin } from './names'
import { lowerFirst } from './sentence'

test('within a sentence only the first letter falls', () => {
  expect(lowerFirst('Port lower left')).toBe('port lower left')
  expect(lowerFirst('Puerta Alfa')).toBe('puerta Alfa')
  expect(lowerFirst('Deltas')).toBe('deltas')
})

test('the name of a side keeps its capital, first or not', () => {
  expect(spoken('bravo_window_division_2')).toBe('Bravo window division 2')
  expect(spokenWithin('bravo_window_division_2')).toBe('Bravo window division 2')
  expect(spokenWithin('kitchen_window_delta')).toBe('kitchen window Delta')
  expect(lowerFirst('Alfa')).toBe('Alfa')
})
