import { expect, test } from 'vitest'
import { buildings } from '../buildings'
import { layOut } from './layout'
import { corners, facingOf, frameView, turn } from './view'

const sides = ['A', 'B', 'C', 'D'] as const

test.each(buildings.map(({ id, scenario }) => [id, scenario] as const))('%s: every opening lies in its wall, within it', (_, scenario) => {
  const { boxes, places } = layOut(scenario)
  expect(places).toHaveLength(scenario.openings.length)
  for (const place of places) {
    const from = boxes.find(({ id }) => id === place.opening.from)!
    expect(place.x0, place.id).toBeGreaterThanOrEqual(from.x0 - 1e-9)
    expect(place.x1, place.id).toBeLessThanOrEqual(from.x1 + 1e-9)
    expect(place.y0, place.id).toBeGreaterThanOrEqual(from.y0 - 1e-9)
    expect(place.y1, place.id).toBeLessThanOrEqual(from.y1 + 1e-9)
    expect(place.z0, place.id).toBeGreaterThanOrEqual(from.z0 - 1e-9)
    expect(place.z1, place.id).toBeLessThanOrEqual(from.z1 + 1e-9)
  }
})

test.each(buildings.map(({ id, scenario }) => [id, scenario] as const))('%s: an inner opening joins compartments that touch', (_, scenario) => {
  const { boxes, places } = layOut(scenario)
  for (const place of places.filter(({ opening }) => opening.to !== 'outside')) {
    const to = boxes.find(({ id }) => id === place.opening.to)!
    const gap = Math.max(to.x0 - place.x1, place.x0 - to.x1, to.y0 - place.y1, place.y0 - to.y1, to.z0 - place.z1, place.z0 - to.z1)
    expect(gap, place.id).toBeLessThan(0.3) // the floor between two storeys is 0.25 m
  }
})

test('side A has Bravo on its left and Delta on its right, and so on round the building', () => {
  const layout = layOut(buildings[1]!.scenario)
  const door = (id: string) => layout.places.find((place) => place.id === id)!
  const facing = (side: (typeof sides)[number], id: string) => facingOf(frameView(layout, side, 1), door(id))
  expect(sides.map((side) => facing(side, 'front_door'))).toEqual(['eye', 'right', 'away', 'left'])
  expect(sides.map((side) => facing(side, 'living_room_side_window'))).toEqual(['left', 'eye', 'right', 'away'])
})

test.each(sides)('seen from %s, everything stands inside the picture with room above for smoke', (side) => {
  for (const { scenario } of buildings) {
    for (const aspect of [0.75, 1, 1.6]) {
      const view = frameView(layOut(scenario), side, aspect)
      for (const place of view.layout.places) {
        for (const { x, y } of corners(view, place)) {
          expect(x).toBeGreaterThan(0)
          expect(x).toBeLessThan(view.widthM)
          expect(y).toBeGreaterThan(0.25 * view.heightM)
          expect(y).toBeLessThan(view.heightM)
        }
      }
    }
  }
})

test('what is on the left of Alpha is on the right of Charlie', () => {
  const layout = layOut(buildings[1]!.scenario)
  const from = (side: 'A' | 'C', x: number) => turn({ side, layout }, x, 0).along
  expect(from('A', 1)).toBeLessThan(from('A', 9))
  expect(from('C', 1)).toBeGreaterThan(from('C', 9))
})
