import { expect, test } from 'vitest'
import { box } from '../buildings/box'
import { bungalow } from '../buildings/houses'
import { frameLength, readFrame } from './frame'
import { frameWith } from './scene-for-tests'
import { describe } from './describe'
import { OPENING } from '../wire.gen'

const text = (...args: Parameters<typeof describe>) => describe(...args).join(' ')

test('says what shows at each opening of the side', () => {
  const said = text(frameWith({ opticalDepth: 1.2, lightness: 0.3, darkness: 4, outVelocityMS: 0.3 }), box, 'A')
  expect(said).toContain('Port lower left, open')
  expect(said).toContain('the upper 6 tenths of the opening')
  expect(said).toContain('hides 7 tenths')
  expect(said).toContain('in a second')
  expect(said).toContain('black or nearly so')
  expect(said).toContain('air is drawn in below')
  expect(said).toContain('Port upper right, shut; nothing comes out')
})

test('never gives a rating, a stage or a regime', () => {
  for (const opticalDepth of [0.1, 1, 4, 12]) {
    const said = text(frameWith({ opticalDepth, flameKW: 20, churning: 1.2, darkness: 3 }), box, 'A')
    expect(said).not.toMatch(/scale|it is a \d/)
    expect(said).not.toMatch(/level|stage|growth|flashover|ventilation|limited|haze|veil|curtain|solid|wisps|driven|pushed/i)
  }
})

test('smoke of a hidden side is told only as rising behind', () => {
  const frame = frameWith({}, 'back_door', bungalow)
  expect(text(frame, bungalow, 'A')).toContain('Smoke rises from a side that is not in view')
  expect(text(frame, bungalow, 'A')).not.toContain('Back door')
  expect(text(frame, bungalow, 'C')).toContain('Back door, open; smoke comes out')
})

test('the words follow a frame that is filled again and again', () => {
  const port = box.openings.findIndex(({ id }) => id === 'port_lower_left')
  const values = new Float64Array(frameLength(box.compartments.length, box.openings.length))
  const frame = readFrame(values, box.compartments.length, box.openings.length)
  const cold = text(frame, box, 'A')
  const at = values.length - (box.openings.length - port) * (values.length - frameLength(box.compartments.length, 0)) / box.openings.length
  Object.assign(values, { [at + OPENING.Open]: 1, [at + OPENING.Flow]: 2, [at + OPENING.OutVelocityMS]: 1, [at + OPENING.OpticalDepth]: 3 })
  const lit = text(readFrame(values, box.compartments.length, box.openings.length, frame), box, 'A')
  expect(cold).toContain('Port lower left, shut; nothing comes out')
  expect(lit).toContain('Port lower left, open; smoke comes out')
})

test('what is shut draws air in at its gaps, and a roof hatch has no below', () => {
  expect(text(frameWith({ open: 0, flow: 1, opticalDepth: 0 }), box, 'A')).toContain('Port lower left, shut; air is drawn in at its gaps')
  const hatch = text(frameWith({ flow: 3 }, 'roof_hatch'), box, 'A').split('Roof hatch')[1]!
  expect(hatch).toContain('smoke rises out of all of it')
  expect(hatch).toContain('air is drawn down into it')
  expect(hatch).not.toMatch(/below|upper/)
})
