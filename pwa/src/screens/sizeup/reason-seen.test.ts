import { expect, test } from 'vitest'
import { seenFor } from './reason-seen'

const ratings = { front_door: { velocity: 3, darkness: 2 }, window: { velocity: 4 }, hatch: {} }
const name = (id: string) => ({ front_door: 'Front door', window: 'Window', hatch: 'Hatch' })[id] ?? id

test('a reason says where it holds and what was seen of its cues there', () => {
  expect(seenFor({ at: ['front_door'], cues: ['velocity', 'darkness'] }, ratings, name)).toBe('Front door: velocity pushed, darkness light')
})

test('a cue that was not rated there is not told, nor a cue on which it does not rest', () => {
  expect(seenFor({ at: ['window'], cues: ['velocity', 'darkness'] }, ratings, name)).toBe('Window: velocity driven')
  expect(seenFor({ at: ['hatch'], cues: ['flow'] }, ratings, name)).toBe('Hatch')
})

test('of several openings the first is told with what was seen there', () => {
  expect(seenFor({ at: ['front_door', 'window'], cues: ['velocity'] }, ratings, name)).toBe('Front door and window: velocity pushed')
  expect(seenFor({ at: ['front_door', 'window', 'hatch'], cues: ['velocity'] }, ratings, name)).toBe('Front door and 2 more: velocity pushed')
})

test('a reason that counts what stands open names what it counted', () => {
  expect(seenFor({ cues: ['density'], open: ['front_door'], shut: ['window', 'hatch'] }, ratings, name)).toBe('The building as a whole: density. Open: front door. Shut: window and hatch')
  expect(seenFor({ shut: ['front_door', 'window', 'hatch'] }, ratings, name)).toBe('The building as a whole. Shut: front door and 2 more')
})

test('a reason of no one opening is of the whole building', () => {
  expect(seenFor({}, ratings, name)).toBe('The building as a whole')
  expect(seenFor({ cues: ['volume', 'neutral_plane'] }, ratings, name)).toBe('The building as a whole: volume, neutral plane')
})
