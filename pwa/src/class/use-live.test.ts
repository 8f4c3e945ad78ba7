import { expect, test } from 'vitest'
import type { ClassFrame, ClassPhoneView } from '../wire.gen'
import { take } from './use-live'

const frame = (part: Partial<ClassFrame>): ClassFrame => ({ kind: 'view', seq: 1, now_ms: 0, ...part })
const phone = (title: string) => ({ title }) as ClassPhoneView

test('a frame brings its part; the others stay as they were', () => {
  let heard = take({ seq: 0 }, frame({ seq: 4, phone: phone('first') }))
  heard = take(heard, frame({ kind: 'places', seq: 9, places: [] }))
  heard = take(heard, frame({ kind: 'here', seq: 9, here: [2] }))
  expect(heard).toEqual({ seq: 4, phone: phone('first'), places: [], here: [2] })
  heard = take(heard, frame({ seq: 5, phone: phone('second') }))
  expect(heard).toEqual({ seq: 5, phone: phone('second'), places: [], here: [2] })
})

test('"what you hold is still so" changes nothing', () => {
  const before = { seq: 7, phone: phone('kept') }
  expect(take(before, frame({ kind: 'current', seq: 7 }))).toEqual(before)
})
