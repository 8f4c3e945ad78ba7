import { expect, test } from 'vitest'
import { STAGE_WORDS, type Finding, type Stage } from '../../wire.gen'
import { newLook, type LookAt } from './looks'
import { leading, radioReport, spellPath, spellStages } from './report'
import { newSketch, outsides } from './sketch'

const house = newSketch('House')
const [door] = outsides(house)

function finding(stages: Partial<Record<Stage, number>>, set: Stage[]): Finding {
  const stage = Object.fromEntries(STAGE_WORDS.map((one) => [one, stages[one] ?? 0])) as Record<Stage, number>
  return {
    v: 1, engine: '0.1.0', stage, regime: { fuel_limited: 0.3, ventilation_limited: 0.7 }, set, openings: {},
    path: ['alpha_door', 'inside_1', 'charlie_door'], hazards: [], because: [], against: [], next_look: null, cautions: [],
  }
}

const read = finding({ growth: 0.04, pre_flashover: 0.5, fully_developed: 0.4 }, ['growth', 'pre_flashover', 'fully_developed'])
read.hazards = [{ event: 'backdraft', probability: 0.6, flagged: true, conditions: [] }]
const look: LookAt = {
  ...newLook(0), windMS: 7, windFrom: 'C', water: true,
  ratings: { [door!.id]: { state: 'open', flow: 'both', volume: 3, density: 4, neutral_plane: 0.4, flame: 'tongues' } },
}

test('the heaviest stages are named and the rest counted', () => {
  expect(leading(read)).toEqual(['pre_flashover', 'fully_developed'])
  expect(spellStages(read)).toBe('Pre-flashover or fully developed, 1 more not ruled out')
})

test('where the rest outweighs every stage, none is named', () => {
  expect(leading(finding({ growth: 0.2, undetermined: 0.8 }, ['growth']))).toEqual([])
  expect(leading(finding({}, []))).toEqual([])
})

test('four alike stages are none', () => {
  const even = finding({ incipient: 0.25, growth: 0.25, decay: 0.25, fully_developed: 0.25 }, ['incipient', 'growth', 'decay', 'fully_developed'])
  expect(spellStages(even)).toBe('Too little seen to name a stage')
})

test('the report begins and ends with the training banner', () => {
  const lines = radioReport('Engine 3', house, look, read).split('\n')
  expect(lines[0]).toBe('TRAINING, NOT AN INCIDENT')
  expect(lines.at(-1)).toBe('TRAINING, NOT AN INCIDENT')
})

test('the report tells what was seen, by side, and what was not', () => {
  const text = radioReport('Engine 3', house, look, read)
  expect(text).toContain('Side Alpha, alpha door, open: out above, in below, volume most, density solid, neutral plane 40 percent up, tongues of flame.')
  expect(text).toContain('Conditions for backdraft seen.')
  expect(text).toContain('Wind onto side Charlie.')
  expect(text).toContain('Not seen: Bravo, Charlie, Delta.')
})

test('the report gives no order and calls nothing safe', () => {
  const text = radioReport('Engine 3', house, look, read).toLowerCase()
  for (const word of ['enter', 'stay out', 'keep closed', 'safe', 'clear', 'seconds', 'ventilate', 'go ', 'attack']) {
    expect(text).not.toContain(word)
  }
})

test('in and out by one opening is one step of the path', () => {
  expect(spellPath(['alpha_door', 'alpha_door'])).toBe('Alpha door')
  expect(spellPath(read.path)).toBe('Alpha door → Inside 1 → Charlie door')
})
