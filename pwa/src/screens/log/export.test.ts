import { expect, test } from 'vitest'
import type { QuizEvent } from '../../wire.gen'
import { toCSV, toJSON } from './export'

const event = {
  kind: 'answer',
  t_client: 0,
  body: {
    answer: { family: '=cmd', seed: 7 },
    verdict: {
      parts: [
        { ask: 'level:density@door', given: { ask: 'a', level: 3 }, truth: [{ ask: 'a', level: 2 }], error: 0.25, steps: 1, right: false },
      ],
    },
  },
} as unknown as QuizEvent

test('a table begins and ends with the banner and has a line a rating', () => {
  expect(toCSV([event]).split('\r\n')).toEqual([
    '"TRAINING, NOT AN INCIDENT"',
    'time,family,seed,ask,given,truth,error,steps,right',
    "1970-01-01T00:00:00.000Z,'=cmd,7,level:density@door,3,2,0.25,1,false",
    '"TRAINING, NOT AN INCIDENT"',
  ])
})

test.each(['=cmd', '+1', '-1', '@x', '＝cmd', '＋1', '－1', '＠x'])('%s is text to a spreadsheet', (family) => {
  const { body } = event as unknown as { body: { answer: object } }
  const one = { ...event, body: { ...body, answer: { ...body.answer, family } } } as unknown as QuizEvent
  expect(toCSV([one])).toContain(`,'${family},`)
})

// Where the comma is a decimal sign, a table is read by its semicolons.
test.each([['x;=1', "x;'=1"], ['x;"=1', `"x;""'=1"`], ['x;;@1', "x;;'@1"], ['x|=1', "x|'=1"], ['a;b', 'a;b']])('%s is text where cells are parted by semicolons', (family, written) => {
  const { body } = event as unknown as { body: { answer: object } }
  const one = { ...event, body: { ...body, answer: { ...body.answer, family } } } as unknown as QuizEvent
  expect(toCSV([one])).toContain(`,${written},7`)
})

test('everything comes out as it lies on the device', () => {
  const given = JSON.parse(toJSON('Engine 3', [event]))
  expect(given).toEqual({
    v: 1, notice: 'TRAINING, NOT AN INCIDENT', call_sign: 'Engine 3', events: [event], end: 'TRAINING, NOT AN INCIDENT',
  })
})
