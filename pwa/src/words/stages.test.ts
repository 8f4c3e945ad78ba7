import { expect, test } from 'vitest'
import { STAGE_WORDS, type Stage } from '../wire.gen'
import { isTold, namedStages, spellShare, spellStages } from './stages'

function read(stages: Partial<Record<Stage, number>>, set: Stage[]) {
  return { stage: Object.fromEntries(STAGE_WORDS.map((one) => [one, stages[one] ?? 0])) as Record<Stage, number>, set }
}

test('the heaviest stages are named by their share, and the rest by name as not ruled out', () => {
  const one = read({ growth: 0.04, pre_flashover: 0.4, fully_developed: 0.5 }, ['growth', 'pre_flashover', 'fully_developed'])
  expect(namedStages(one)).toEqual({ first: ['fully_developed', 'pre_flashover'], rest: ['growth'] })
  expect(spellStages(one)).toBe('Fully developed or pre-flashover; growth not ruled out')
})

test('two stages at 43 % each are two stages, not too little seen', () => {
  const two = read({ growth: 0.43, decay: 0.43, undetermined: 0.14 }, ['growth', 'decay'])
  expect(spellStages(two)).toBe('Growth or decay')
  const withMore = read({ growth: 0.3, decay: 0.3, incipient: 0.1, undetermined: 0.3 }, ['incipient', 'growth', 'decay'])
  expect(spellStages(withMore)).toBe('Growth or decay; incipient not ruled out')
})

test('where more is left unassigned than assigned, no stage is named', () => {
  const little = read({ growth: 0.2, undetermined: 0.8 }, ['growth'])
  expect(isTold(little)).toBe(false)
  expect(spellStages(little)).toBe('Too little seen to name a stage')
  expect(isTold(read({}, []))).toBe(false)
})

test('four alike stages are said to be not told apart', () => {
  const even = read({ incipient: 0.25, growth: 0.25, decay: 0.25, fully_developed: 0.25 }, ['incipient', 'growth', 'fully_developed', 'decay'])
  expect(spellStages(even)).toBe('Not told apart: incipient, growth, fully developed and decay')
})

test('a small share is never nothing', () => {
  expect([0, 0.004, 0.01, 0.42].map(spellShare)).toEqual(['under 1 %', 'under 1 %', '1 %', '42 %'])
})
