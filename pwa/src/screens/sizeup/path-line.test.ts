import { expect, test } from 'vitest'
import { layOut } from '../../render/layout'
import { pathLines } from './path-line'
import { newSketch, withOpening, withStoreys } from './sketch'

const house = newSketch('House')
const ground = new Set(['inside_1'])

test('a path in by the front and out by the back crosses the house', () => {
  const layout = layOut(house.plan)
  const [line] = pathLines(layout, ground, ['alpha_door', 'charlie_door'])
  expect(line).toHaveLength(5)
  expect(line!.map(({ y }) => y)).toEqual(line!.map(({ y }) => y).toSorted((a, b) => a - b))
  expect(line![0]!.y).toBeLessThan(layout.y0)
  expect(line!.at(-1)!.y).toBeGreaterThan(layout.y1)
})

test('a path through one opening goes in and comes back beside itself', () => {
  const layout = layOut(house.plan)
  for (const path of [['alpha_door'], ['alpha_door', 'alpha_door']]) {
    const [line] = pathLines(layout, ground, path)
    const [first, last] = [line![0]!, line!.at(-1)!]
    const apart = Math.hypot(first.x - last.x, first.y - last.y)
    expect(apart).toBeGreaterThan(0.2)
    expect(apart).toBeLessThan(1.5)
  }
})

test('a path that climbs has a part on each storey', () => {
  const tall = withOpening(withStoreys(house, 2), 'D', 2, 'window')
  const layout = layOut(tall.plan)
  const path = ['alpha_door', 'delta_window_division_2']
  expect(tall.plan.openings.map(({ id }) => id)).toContain(path[1])
  const [low] = pathLines(layout, ground, path)
  const [high] = pathLines(layout, new Set(['inside_2']), path)
  expect(low).toHaveLength(3)
  expect(high).toHaveLength(3)
  expect(high!.at(-1)!.x).toBeGreaterThan(layout.x1)
})

test('no path, no line', () => {
  expect(pathLines(layOut(house.plan), ground, [])).toEqual([])
})

test('a path through one opening has no line on a storey it does not touch', () => {
  const tall = withStoreys(house, 2)
  const path = ['alpha_door', 'alpha_door']
  expect(pathLines(layOut(tall.plan), new Set(['inside_2']), path)).toEqual([])
  expect(pathLines(layOut(tall.plan), ground, path)).toHaveLength(1)
})
