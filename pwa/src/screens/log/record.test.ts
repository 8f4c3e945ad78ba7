import { expect, test } from 'vitest'
import type { Part, Reply } from '../../wire.gen'
import type { Answered } from '../../practice/record'
import { recordOf } from './record'
import { smooth } from './spark'

const part = (more: Partial<Part>, given: Partial<Reply>, truth: Partial<Reply>): Part => ({
  ask: 'a', given: { ask: 'a', ...given }, truth: [{ ask: 'a', ...truth }], error: 0, right: false, remark: '', ...more,
})
const answered = (parts: Part[]) => ({ answer: {}, verdict: { parts }, t: 0 }) as unknown as Answered

test('ratings are kept by skill, with the steps and errors that the verdict gives', () => {
  const record = recordOf([
    answered([
      part({ kind: 'level', cue: 'velocity', steps: 1, error: 0.25 }, { level: 3 }, { level: 2 }),
      part({ kind: 'level', cue: 'density', error: 1 }, { unsure: true }, { level: 4 }),
    ]),
    answered([part({ kind: 'level', cue: 'velocity', steps: 0, right: true }, { level: 2 }, { level: 2 })]),
  ])
  expect(record.get('velocity')).toEqual({ off: [1, 0], errors: [0.25, 0] })
  expect(record.get('density')).toEqual({ off: [], errors: [1] })
})

test('the neutral plane is off by a share of the height', () => {
  const record = recordOf([answered([part({ kind: 'plane' }, { plane: 0.7 }, { plane: 0.5 })])])
  expect(record.get('neutral_plane')?.off[0]).toBeCloseTo(0.2)
})

test('the line of errors is a mean over ten, and starts when there are ten', () => {
  expect(smooth(Array(9).fill(1))).toEqual([])
  expect(smooth([...Array(10).fill(1), ...Array(10).fill(0)])).toHaveLength(11)
  expect(smooth([...Array(10).fill(1), ...Array(10).fill(0)]).at(-1)).toBe(0)
})
