import { expect, test } from 'vitest'
import type { QuizEvent } from '../../../wire.gen'
import { newestBurn, secondsAfter, simulated, standing, type Note } from './record'

let seq = 0
const event = (note: Note, at: number, burn = 'b'): QuizEvent => ({
  v: 1, id: `e${++seq}`, device: 'd', seq, engine: '0', t_client: at, kind: 'note', body: { v: 1, about: 'prop_burn', burn, at, ...note },
})
const begin: Note = { what: 'begin', checks: ['site'], signed: 'Marsh 2', stop_word: 'Harbour' }

test('a burn is folded from its notes, and other notes are left alone', () => {
  const other: QuizEvent = { ...event({ what: 'end' }, 0), body: { text: 'wind backed' } }
  const log = newestBurn([event(begin, 0, 'old'), event({ what: 'end' }, 1, 'old'), other, event(begin, 5000), event({ what: 'lit' }, 10_000), event({ what: 'move', opening: 'floor_hole', open: 1, planned: 2 }, 75_500)])!
  expect(log).toMatchObject({ burn: 'b', signed: 'Marsh 2', stopWord: 'Harbour', litAt: 10_000, ended: false })
  expect(secondsAfter(log, log.entries[1]!.at)).toBe(65.5)
  expect([...log.passed]).toEqual([2])
  expect(standing(log, { port_lower_left: 1 })).toEqual({ port_lower_left: 1, floor_hole: 1 })
  expect(simulated(log)).toEqual([{ t_s: 65.5, opening: 'floor_hole', open: 1 }])
})

test('what is struck out stays in the log and no longer counts', () => {
  const move = event({ what: 'move', opening: 'roof_hatch', open: 1, planned: 6 }, 30_000)
  const log = newestBurn([event(begin, 0), event({ what: 'lit' }, 1000), move, event({ what: 'strike', entry: move.id }, 31_000), event({ what: 'end' }, 90_000)])!
  expect(log.entries.map(({ struck }) => struck)).toEqual([false, true])
  expect(simulated(log)).toEqual([])
  expect(log.passed.size).toBe(0)
  expect(log.ended).toBe(true)
})

test('no note, no burn', () => expect(newestBurn([])).toBeUndefined())
