import { expect, test } from 'vitest'
import { CUE_WORDS } from '../../wire.gen'
import { cueOf, cuesFor, newLook, toReadings, withCue, type LookAt } from './looks'
import { newSketch, outsides, type Sketch } from './sketch'

const house = newSketch('House')
const [door] = outsides(house)

test('cannot tell and not looked at are two things on the device and one to the engine', () => {
  const rating = withCue(withCue(undefined, 'density', 3), 'density', null)
  expect(cueOf(rating, 'density')).toBeNull()
  expect(cueOf(rating, 'volume')).toBeUndefined()
  const look: LookAt = { ...newLook(0), ratings: { [door!.id]: rating } }
  const [reading] = toReadings(house, [look]).looks[0]!.openings
  expect(reading).not.toHaveProperty('density')
  expect(reading).not.toHaveProperty('cannotTell')
})

test('rating after "cannot tell" takes it back', () => {
  const rating = withCue(withCue(undefined, 'flow', null), 'flow', 'both')
  expect(cueOf(rating, 'flow')).toBe('both')
  expect(rating.cannotTell).toEqual([])
})

test('a neutral plane is asked only where gas may pass both ways', () => {
  expect(cuesFor(door!, { flow: 'both' }).main).toContain('neutral_plane')
  expect(cuesFor(door!, { flow: 'out' }).main).not.toContain('neutral_plane')
  expect(cuesFor({ ...door!, kind: 'roof' }, { flow: 'both' }).main).not.toContain('neutral_plane')
  expect(cuesFor({ ...door!, kind: 'window' }, {}).more).toContain('window')
})

test('every cue is offered once, and the next look is never among the rest', () => {
  const window = { ...door!, kind: 'window' as const }
  for (const next of [undefined, ...CUE_WORDS]) {
    const { main, more } = cuesFor(window, {}, next)
    expect([...main, ...more].toSorted()).toEqual(['state', ...CUE_WORDS].toSorted())
    if (next) expect(main).toContain(next)
  }
})

test('looks are timed from the first one, and the plan goes along only where it is known', () => {
  const first: LookAt = { ...newLook(60_000), ratings: { [door!.id]: { flow: 'out' } } }
  const second: LookAt = { ...newLook(150_000, first), ratings: { [door!.id]: { flow: 'both', state: 'open' } }, changed: [door!.id] }
  const readings = toReadings(house, [first, second])
  expect(readings.looks.map(({ t_s }) => t_s)).toEqual([0, 90])
  expect(readings.looks[1]!.changes).toEqual([{ opening: door!.id, state: 'open' }])
  expect(readings).not.toHaveProperty('plan')
  const known: Sketch = { ...house, insideKnown: true }
  expect(toReadings(known, [second]).plan?.openings.find(({ id }) => id === door!.id)?.open).toBe(1)
})

test('wind and water carry over to the next look', () => {
  const first: LookAt = { ...newLook(0), windMS: 3, windFrom: 'A', water: true }
  const readings = toReadings(house, [newLook(5, first)])
  expect(readings.looks[0]).toMatchObject({ wind: { m_s: 3, from: 'A' }, water: true })
})
