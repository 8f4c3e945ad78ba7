import { expect, test } from 'vitest'
import { ASK_KIND_WORDS, type Ask, type ClassCount, type Reply } from '../wire.gen'
import { replyOf, stopsOf, unsure, valueOf } from './stops'

const ask = (kind: Ask['kind'], more: Partial<Ask> = {}): Ask => ({ id: 'q', kind, text: '', ...more })
const counts = (...values: string[]): ClassCount[] => values.map((value) => ({ value, n: 1 }))
const keys = (asked: Ask, ...values: string[]) => stopsOf({ ask: asked, counts: counts(...values) }).map(({ key }) => key)

test('the rail of a cue has its five levels and "cannot tell", whoever answered', () => {
  const stops = stopsOf({ ask: ask('level', { cue: 'density' }), counts: [] })
  expect(stops.map(({ key }) => key)).toEqual(['0', '1', '2', '3', '4', unsure])
  expect(stops.every(({ name }) => name !== '')).toBe(true)
})

test('whatever is answered by a word has a stop for each, so that a printed sheet has its boxes', () => {
  const drawnOrNamedByTheScene = new Set<Ask['kind']>(['plane', 'opening', 'moment'])
  for (const kind of ASK_KIND_WORDS.filter((one) => !drawnOrNamedByTheScene.has(one))) {
    const stops = stopsOf({ ask: ask(kind, { cue: 'volume' }), counts: [] })
    expect(stops.length, kind).toBeGreaterThan(2)
    expect(stops.every(({ name }) => name !== ''), kind).toBe(true)
  }
})

test('openings stand as the server lists them', () => {
  expect(keys(ask('opening'), 'window_b', 'front_door')).toEqual(['window_b', 'front_door', unsure])
})

test('a reply and its stop stand for each other, as on the server', () => {
  const replies: [Ask, Reply, string][] = [
    [ask('level'), { ask: 'q', level: 0 }, '0'],
    [ask('flow'), { ask: 'q', flow: 'both' }, 'both'],
    [ask('stage'), { ask: 'q', stage: 'growth' }, 'growth'],
    [ask('change'), { ask: 'q', change: 'less' }, 'less'],
    [ask('opening'), { ask: 'q', opening: 'front_door' }, 'front_door'],
    [ask('moment'), { ask: 'q', at_s: 95 }, '95'],
    [ask('moment'), { ask: 'q', quiet: true }, 'quiet'],
    [ask('level'), { ask: 'q', unsure: true }, unsure],
  ]
  for (const [asked, reply, value] of replies) {
    expect(valueOf(reply)).toBe(value)
    expect(replyOf(asked, value)).toEqual(reply)
  }
})
