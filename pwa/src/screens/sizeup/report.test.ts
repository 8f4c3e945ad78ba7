import { expect, test } from 'vitest'
import { STAGE_WORDS, type Finding, type Stage } from '../../wire.gen'
import { newLook, type LookAt } from './looks'
import { radioReport } from './report'
import { newSketch, outsides, withStoreys, withOpening } from './sketch'

const house = newSketch('Sketched house')
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

test('the report begins and ends with the training banner', () => {
  const lines = radioReport('Engine 3', house, look, read).split('\n')
  expect(lines[0]).toBe('TRAINING, NOT AN INCIDENT')
  expect(lines.at(-1)).toBe('TRAINING, NOT AN INCIDENT')
})

test('the report tells what was seen, by side, and what was not', () => {
  const text = radioReport('Engine 3', house, look, read)
  expect(text).toContain('Sketched house, one storey.')
  expect(text).toContain(
    'Side Alpha, door, open: out above, in below, volume most, density solid, neutral plane 40 percent of the way up, tongues of flame.',
  )
  expect(text).toContain('Conditions for backdraft seen.')
  expect(text).toContain('Wind onto side Charlie.')
  expect(text).toContain('Not seen: Bravo, Charlie, Delta.')
})

test('the report names the stages as the screen does, and the path in words', () => {
  const text = radioReport('Engine 3', house, look, read)
  expect(text).toContain('Signs consistent with pre-flashover or fully developed; growth not ruled out.')
  expect(text).toContain('Flow path, as seen: in by the Alpha door, through the inside, out by the Charlie door.')
  expect(radioReport('Engine 3', house, look, finding({ undetermined: 1 }, []))).toContain('Stage undetermined from here.')
})

test('a window of an upper storey is told with its division', () => {
  const tall = withOpening(withStoreys(newSketch('Sketched house'), 2), 'B', 2, 'window')
  const text = radioReport('Engine 3', tall, { ...newLook(0), ratings: { bravo_window_division_2: { flow: 'out' } } }, read)
  expect(text).toContain('Sketched house, two storeys.')
  expect(text).toContain('Side Bravo, window, division 2: out, all of it.')
})

test('the report gives no order and calls nothing safe', () => {
  const text = radioReport('Engine 3', house, look, read).toLowerCase()
  for (const word of ['enter', 'stay out', 'keep closed', 'safe', 'clear', 'seconds', 'ventilate', 'go ', 'attack']) {
    expect(text).not.toContain(word)
  }
})
