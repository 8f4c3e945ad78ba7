import { expect, test } from 'vitest'
import type { Progress, Skill } from '../wire.gen'
import { contrastFor, preShiftSize, weigh } from './lean'

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

test('pairs come as often as they were confused', () => {
  const confusions = [
    { contrast: { stages: ['growth', 'decay'] }, n: 3 },
    { contrast: { cue: 'density', levels: [2, 3] }, n: 1 },
  ] as Progress['confusions']
  const drawn = [0, 1, 2, 3].map((n) => contrastFor(confusions, () => n))
  expect(drawn.map((one) => one?.cue)).toEqual([undefined, undefined, undefined, 'density'])
  expect(contrastFor([], () => 0)).toBeUndefined()
})

test('three minutes hold three to six scenes', () => {
  expect([null, 10, 30, 200].map(preShiftSize)).toEqual([4, 6, 4, 3])
})
