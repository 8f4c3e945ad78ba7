import { expect, test } from 'vitest'
import { Chance } from '../local/sim/chance'
import { remember } from './memory'
import { interleave, plan, type Choice } from './plan'

const kinds = ['read_opening', 'flow_plane', 'call_stage', 'predict_move'] as const
const families: Choice[] = kinds.flatMap((kind) => [1, 2, 3].map((n) => ({ id: `${kind}_${n}`, kind, lesson: `lesson ${n}` })))
const day = 86_400_000
const chance = new Chance(7)
const below = (n: number) => chance.below(n)
const ids = (list: readonly Choice[]) => list.map(({ id }) => id)

test('no family twice in a set, and few are repeated', () => {
  expect(new Set(ids(plan(families, { size: 8, now: 0, memory: new Map(), below }))).size).toBe(8)
  expect(plan(families.slice(0, 2), { size: 5, now: 0, memory: new Map(), below })).toHaveLength(5)
  expect(plan([], { size: 8, now: 0, memory: new Map(), below })).toEqual([])
})

test('what went wrong is due in the next set, what was right waits for days', () => {
  const memory = remember([
    { family: 'read_opening_1', t: 0, error: 0.5 },
    { family: 'read_opening_2', t: 0, error: 0 },
  ])
  const soon = ids(plan(families, { size: 8, now: 15 * 60_000, memory, below }))
  expect(soon).toContain('read_opening_1')
  expect(soon).not.toContain('read_opening_2')
  expect(ids(plan(families, { size: 8, now: 30 * day, memory, below }))).toContain('read_opening_2')
})

test('of what is due the least held comes first, whether it went wrong or was long ago', () => {
  const memory = remember([
    { family: 'flow_plane_1', t: 0, error: 0 },
    { family: 'flow_plane_2', t: 40 * day, error: 1 },
  ])
  const first = (now: number) => ids(plan(families, { size: 1, now, memory, below }))
  expect(first(40 * day + 15 * 60_000)).toEqual(['flow_plane_1']) // went wrong just now, and the reason is fresh
  expect(first(60 * day)).toEqual(['flow_plane_2'])
})

test('each right answer makes the gap longer', () => {
  const gaps = [1, 2, 3].map((turns) => {
    const memory = remember(Array.from({ length: turns }, (_, n) => ({ family: 'a', t: n * 10 * day, error: 0 })))
    return memory.get('a')!.scheduled_days
  })
  expect(gaps).toEqual(gaps.toSorted((a, b) => a - b))
  expect(gaps[2]).toBeGreaterThan(2 * gaps[0]!)
})

test('a clock that ran backward breaks nothing', () => {
  const memory = remember([{ family: 'a', t: 9 * day, error: 0 }, { family: 'a', t: day, error: 1 }])
  expect(ids(plan([{ id: 'a', kind: 'call_stage', lesson: '' }], { size: 1, now: 0, memory, below }))).toEqual(['a'])
})

test('weak cues come more often', () => {
  const weight = (id: string) => (id.startsWith('call_stage') ? 2 : 1)
  const set = ids(plan(families, { size: 4, now: 0, memory: new Map(), below, weight }))
  expect(set.filter((id) => id.startsWith('call_stage'))).toHaveLength(3)
})

test('neighbours differ in kind wherever they can', () => {
  for (let turn = 0; turn < 200; turn++) {
    const order = interleave(families.slice(0, 8), below)
    expect(order.filter(({ kind }, n) => n > 0 && kind === order[n - 1]!.kind)).toEqual([])
    expect(order).toHaveLength(8)
  }
})
