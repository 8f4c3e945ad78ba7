import { expect, test } from 'vitest'
import { FRAME_HEADER, FRAME_HEADER_LENGTH, COMPARTMENT, COMPARTMENT_LENGTH, OPENING, OPENING_LENGTH } from '../../wire.gen'
import { Past, secondsAt, stepAt, wordsOf } from './past'
import { series, times, type Shown } from './series'
import type { Burn } from './burn'

const LENGTH = FRAME_HEADER_LENGTH + COMPARTMENT_LENGTH + OPENING_LENGTH
const UPPER = FRAME_HEADER_LENGTH + COMPARTMENT.UpperC
const AT_OPENING = FRAME_HEADER_LENGTH + COMPARTMENT_LENGTH

const frame = (at: Record<number, number>) => Object.assign(new Float64Array(LENGTH), at)
const past = () => {
  const it = new Past(wordsOf(1, 1))
  it.add(0, frame({ [UPPER]: 20, [AT_OPENING + OPENING.Flow]: 0, [AT_OPENING + OPENING.NeutralPlane]: NaN }))
  it.add(10, frame({ [UPPER]: 40, [AT_OPENING + OPENING.Flow]: 3, [AT_OPENING + OPENING.NeutralPlane]: 0.5, [FRAME_HEADER.Stage]: 2 }))
  it.add(20, frame({ [UPPER]: 80, [AT_OPENING + OPENING.Flow]: 3, [AT_OPENING + OPENING.NeutralPlane]: 0.25, [FRAME_HEADER.Stage]: 3 }))
  return it
}
const read = (it: Past, step: number) => {
  const out = new Float64Array(LENGTH)
  it.read(step, out)
  return out
}

test('a step of the engine is a twentieth of a second, exactly', () => {
  for (let s = 0; s <= 3600; s++) expect(secondsAt(stepAt(s))).toBe(s)
})

test('between two kept frames numbers run in a line and words wait', () => {
  const it = past()
  expect(read(it, 15)[UPPER]).toBe(60)
  expect(read(it, 15)[FRAME_HEADER.Stage]).toBe(2)
  expect(read(it, 15)[FRAME_HEADER.TS]).toBe(0.75)
  expect(read(it, 5)[AT_OPENING + OPENING.NeutralPlane]).toBeNaN()
  expect(read(it, 20)[UPPER]).toBe(80)
  expect(read(it, 99)[UPPER]).toBe(80)
})

test('a past cut off and gone on with is another one', () => {
  const it = past()
  const other = it.upTo(10)
  other.add(20, frame({ [UPPER]: 10 }))
  expect([read(it, 20)[UPPER], read(other, 20)[UPPER]]).toEqual([80, 10])
})

test('a curve has few points, and ends at the newest moment', () => {
  expect(times(2)).toEqual([0, 0.5, 1, 1.5, 2])
  expect(times(2.3).at(-1)).toBe(2.3)
  expect(times(3600).length).toBeLessThanOrEqual(402)
  expect(times(600, 24, 5)).toHaveLength(25)
})

test('the second line begins where it left the first; no plane where gas goes one way', () => {
  const shown: Shown = { room: 0, opening: 0, compartments: 1 }
  const [first, second] = [{ past: past(), step: 20 }, { past: past(), step: 20 }] as unknown as Burn[]
  const heat = series('temperature', [first!, second!], shown, 0.5, [0, 0.5, 1, 1.5])
  expect(heat.lines.map(({ fire, layer }) => `${fire} ${layer}`)).toEqual(['first upper', 'first lower', 'second upper', 'second lower'])
  expect(heat.lines[0]!.values).toEqual([20, 40, 80, null])
  expect(heat.lines[2]!.values).toEqual([null, 40, 80, null])
  expect(series('plane', [first!], shown, undefined, [0, 0.5, 1]).lines[0]!.values).toEqual([null, 50, 25])
})

test('a room without a layer has no upper temperature and no oxygen of one', () => {
  const it = new Past(wordsOf(1, 1))
  const layer = FRAME_HEADER_LENGTH + COMPARTMENT.InterfaceM
  it.add(0, frame({ [UPPER]: 300, [layer]: NaN }))
  it.add(10, frame({ [UPPER]: 300, [layer]: 0.3 }))
  const burns = [{ past: it, step: 10 }] as unknown as Burn[]
  const shown: Shown = { room: 0, opening: 0, compartments: 1 }
  expect(series('temperature', burns, shown, undefined, [0, 0.5]).lines.map(({ values }) => values)).toEqual([[null, 300], [0, 0]])
  expect(series('oxygen', burns, shown, undefined, [0, 0.5]).lines[0]!.values).toEqual([null, 0])
})
