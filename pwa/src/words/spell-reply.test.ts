import { expect, test } from 'vitest'
import type { Ask } from '../wire.gen'
import { spellReply, spellTruth } from './spell-reply'

const ask: Ask = { id: 'moment', kind: 'moment', text: '', watch: { from_s: 60, to_s: 160 } }

test('a moment is told as whoever watched counts, not as the scene does', () => {
  expect(spellReply(ask, { ask: 'moment', at_s: 105.2 })).toBe('Reported at 45 s')
  expect(spellTruth(ask, { ask: 'moment', at_s: 90, event_s: 110 })).toBe('It began to show at 30 s. The event came at 50 s.')
  expect(spellTruth(ask, { ask: 'moment', at_s: 90 })).toBe('It began to show at 30 s. No event came.')
})

test('where nothing showed the truth is not that nobody reported', () => {
  expect(spellTruth(ask, { ask: 'moment', quiet: true })).toBe('There was nothing to report')
})

test('of all else the truth is told as an answer is', () => {
  expect(spellTruth({ id: 'flow', kind: 'flow', text: '' }, { ask: 'flow', flow: 'in' })).toBe('In, all of it')
})
