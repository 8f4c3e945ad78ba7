import { expect, test } from 'vitest'
import { box } from '../../buildings/box'
import { stillOpening } from '../../render/frame'
import { through } from './through'

const say = (id: string, flow: number, open = 1, opticalDepth = 2) =>
  through(box, box.openings.find((one) => one.id === id)!, { ...stillOpening(), flow, open, opticalDepth })

test('what is shut leaks at its gaps', () => {
  for (const id of ['port_lower_left', 'roof_hatch', 'door_lower']) {
    for (const flow of [1, 2, 3]) expect(say(id, flow, 0)).toContain('at its gaps')
  }
})

test('a hole that lies level has an up and a down, and no above and below', () => {
  for (const id of ['floor_hole', 'ceiling_hatch', 'roof_hatch']) {
    for (const flow of [0, 1, 2, 3]) expect(say(id, flow)).not.toMatch(/above|below/)
  }
  expect(say('ceiling_hatch', 2)).toBe('gas rises through it')
  expect(say('floor_hole', 2)).toBe('gas sinks through it')
  expect(say('roof_hatch', 1)).toBe('air is drawn down into it')
  expect(say('roof_hatch', 2)).toBe('smoke rises out of it')
})

test('a door inside is told by its rooms', () => {
  expect(say('door_lower', 3)).toBe('above, gas goes into the lower right; below, into the lower left')
})

test('air is never called clear', () => {
  for (const { id } of box.openings) for (const flow of [0, 1, 2, 3]) for (const open of [0, 1]) expect(say(id, flow, open, 0)).not.toMatch(/clear|clean|safe/)
  expect(say('port_lower_left', 2, 1, 0)).toBe('air without smoke to be seen comes out')
})
