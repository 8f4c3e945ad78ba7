import { expect, test } from 'vitest'
import { spoken } from '../../words/names'
import { place, thePlace } from '../../words/es/places'
import { buildings } from '../../buildings'
import { box } from '../../buildings/box'
import {
  atticsOf,
  fromScenario,
  insides,
  newSketch,
  outsides,
  storeysOf,
  withOpen,
  withOpening,
  withoutOpening,
  withRoofOpening,
  withStoreys,
} from './sketch'

test('a new sketch can be walked round: every side has an opening', () => {
  expect(new Set(outsides(newSketch('House')).map(({ side }) => side))).toEqual(new Set(['A', 'B', 'C', 'D']))
})

test('openings of one wall stand apart and inside the wall', () => {
  let sketch = newSketch('House')
  for (let n = 0; n < 3; n++) sketch = withOpening(sketch, 'B', 1, 'window')
  const wall = sketch.plan.openings.filter(({ side }) => side === 'B')
  const starts = wall.map(({ at_m }) => at_m!)
  expect(new Set(wall.map(({ id }) => id)).size).toBe(4)
  starts.slice(1).forEach((start, n) => expect(start).toBeGreaterThan(starts[n]! + wall[n]!.width_m!))
  expect(starts.at(-1)! + wall.at(-1)!.width_m!).toBeLessThanOrEqual(8)
})

test('taking storeys away takes their openings, and the roof opening comes down with the roof', () => {
  const tall = withRoofOpening(withOpening(withStoreys(newSketch('House'), 3), 'A', 3, 'window'))
  expect(outsides(tall).map(({ floor }) => floor)).toContain(3)
  const low = withStoreys(tall, 1)
  expect(outsides(low).every(({ floor }) => floor === 1)).toBe(true)
  expect(low.plan.openings.find(({ kind }) => kind === 'roof_hatch')?.from).toBe('inside_1')
})

test('an opening taken away is gone', () => {
  const sketch = newSketch('House')
  const [first] = outsides(sketch)
  expect(outsides(withoutOpening(sketch, first!.id)).map(({ id }) => id)).not.toContain(first!.id)
})

test('the small box keeps its inside: ports to walk past, doors and hatches within', () => {
  const sketch = fromScenario(box, 'Small box')
  expect(outsides(sketch).map(({ kind }) => kind)).toEqual(['vent', 'vent', 'vent', 'vent', 'roof'])
  expect(insides(sketch).length + outsides(sketch).length).toBe(box.openings.length)
  const [inner] = insides(sketch)
  const opened = withOpen(sketch, inner!.id, 0.25)
  expect(insides(opened)[0]!.open).toBe(0.25)
  expect(box.openings.find(({ id }) => id === inner!.id)?.open).not.toBe(0.25)
})

test('a void under the roof is no storey, and its hatch counts with the highest one', () => {
  const sketch = fromScenario(box, 'Small box')
  expect(storeysOf(sketch.plan)).toHaveLength(2)
  expect(atticsOf(sketch.plan)).toHaveLength(1)
  expect(outsides(sketch).find(({ kind }) => kind === 'roof')?.floor).toBe(2)
})

test('ids read as words', () => {
  expect(spoken('alpha_window_2')).toBe('Alpha window 2')
})

test('every opening that can be drawn, and every one of our buildings, has a Spanish name', () => {
  let sketch = withRoofOpening(withRoofOpening(withStoreys(newSketch('House'), 2)))
  for (const kind of ['door', 'window', 'port', 'leak'] as const) sketch = withOpening(withOpening(sketch, 'B', 2, kind), 'B', 2, kind)
  const ids = [sketch.plan, ...buildings.map(({ scenario }) => scenario)].flatMap(({ openings }) => openings.map(({ id }) => id))
  expect(ids.filter((id) => place(id) === undefined)).toEqual([])
  expect(thePlace('bravo_window_division_2_2')).toBe('la ventana Bravo división 2 2')
})
