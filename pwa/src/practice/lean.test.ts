import { expect, test } from 'vitest'
import type { Contrast, Progress, Skill } from '../wire.gen'
import { contrastFor, preShiftSize, weigh, weighPairs } from './lean'

const skill = (name: Skill, recent: number, ability = 0) => ({ skill: name, n: 20, given: 20, error: recent, recent, right: 0.5, bias: null, kappa: null, ability })
const progress = { skills: [skill('density', 0.5), skill('flow', 0)], families: [{ family: 'fit', n: 9, difficulty: -1.1 }, { family: 'far', n: 9, difficulty: 4 }] } as unknown as Progress

test('a family that asks for a weak cue is wanted more, an unknown one as any', () => {
  expect(weigh('x', new Set<Skill>(['density']), progress)).toBe(2)
  expect(weigh('x', new Set<Skill>(['flow']), progress)).toBe(1)
  expect(weigh('x', undefined, progress)).toBe(1)
})

test('a family that is far too hard is wanted less than one that fits', () => {
  const flow = new Set<Skill>(['flow'])
  expect(weigh('fit', flow, progress)).toBeCloseTo(1, 2)
  expect(weigh('far', flow, progress)).toBeLessThan(0.65)
})

test('of the pairs that a family can show, those confused come as often as they were', () => {
  const confusions = [
    { contrast: { stages: ['growth', 'decay'] }, n: 3 },
    { contrast: { cue: 'density', levels: [2, 3] }, n: 1 },
    { contrast: { stages: ['growth', 'incipient'] }, n: 9 },
  ] as Progress['confusions']
  const pairs: Contrast[] = [{ stages: ['decay', 'growth'] }, { cue: 'density', levels: [3, 2] }]
  const drawn = [0, 1, 2, 3].map((n) => contrastFor(pairs, confusions, () => n))
  expect(drawn.map((one) => one?.cue)).toEqual([undefined, undefined, undefined, 'density'])
  expect(drawn[0]).toEqual({ stages: ['growth', 'decay'] })
  expect(contrastFor([{ stages: ['incipient', 'decay'] }], confusions, () => 0)).toBeUndefined()
  expect([weighPairs(pairs, confusions), weighPairs(pairs, [])]).toEqual([2, 1])
})

test('three minutes hold three to six scenes', () => {
  expect([null, 10, 30, 200].map(preShiftSize)).toEqual([4, 6, 4, 3])
})
