import { expect, test } from 'vitest'
import type { AnswerBody, Part, QuizEvent, Reply } from '../../wire.gen'
import { answersOf, recordOf } from './record'

const part = (ask: string, given: Partial<Reply>, truth: Partial<Reply>, more: Partial<Part> = {}): Part => ({
  ask, given: { ask, ...given }, truth: [{ ask, ...truth }], error: 0, right: false, remark: '', ...more,
})

const body = (parts: Part[], confidence?: number): AnswerBody =>
  ({ answer: confidence === undefined ? {} : { confidence }, verdict: { parts } }) as AnswerBody

test('levels are kept by cue, with the steps that the verdict gives', () => {
  const record = recordOf([
    body([
      part('level:velocity@door', { level: 3 }, { level: 2 }, { steps: 1 }),
      part('level:velocity@window', { level: 2 }, { level: 2 }, { steps: 0, right: true }),
      part('level:density@door', { unsure: true }, { level: 4 }),
    ]),
  ])
  expect(record.levels.get('velocity')).toEqual({ off: [1, 0], right: 1, cannotTell: 0, count: 2 })
  expect(record.levels.get('density')).toEqual({ off: [], right: 0, cannotTell: 1, count: 1 })
})

test('the neutral plane is off by a share of the height', () => {
  const { plane } = recordOf([body([part('plane@door', { plane: 0.7 }, { plane: 0.5 })])])
  expect(plane.off[0]).toBeCloseTo(0.2)
})

test('a call is right when all of it was', () => {
  const stage = part('stage', { stage: 'growth' }, { stage: 'growth' }, { right: true })
  const regime = part('regime', { regime: 'fuel_limited' }, { regime: 'ventilation_limited' })
  const record = recordOf([body([stage, regime], 0.9), body([stage], 0.75)])
  expect(record.sure).toEqual([
    { confidence: 0.9, right: false },
    { confidence: 0.75, right: true },
  ])
  expect(record.calls.get('stage')?.right).toBe(2)
})

test('only answers count', () => {
  const events = [{ kind: 'size_up', body: {} }, { kind: 'answer', body: body([]) }] as QuizEvent[]
  expect(answersOf(events)).toHaveLength(1)
})
