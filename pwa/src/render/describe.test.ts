import { expect, test } from 'vitest'
import { box } from '../buildings/box'
import { bungalow } from '../buildings/houses'
import { frameWith } from './scene-for-tests'
import { describe } from './describe'

const text = (...args: Parameters<typeof describe>) => describe(...args).join(' ')

test('says what shows at each opening of the side', () => {
  const said = text(frameWith({ opticalDepth: 1.2, lightness: 0.3, outVelocityMS: 0.3 }), box, 'A')
  expect(said).toContain('Port lower left, open')
  expect(said).toContain('the upper 6 tenths of the opening')
  expect(said).toContain('hides 7 tenths')
  expect(said).toContain('in 1 seconds')
  expect(said).toContain('air is drawn in below')
  expect(said).toContain('Port upper right, shut; nothing comes out')
})

test('never gives a rating, a stage or a regime', () => {
  for (const opticalDepth of [0.1, 1, 4, 12]) {
    const said = text(frameWith({ opticalDepth, flameKW: 20, churning: 1.2 }), box, 'A')
    expect(said).not.toMatch(/level|stage|growth|flashover|ventilation|limited|haze|veil|curtain|solid|wisps|driven|pushed/i)
  }
})

test('smoke of a hidden side is told only as rising behind', () => {
  const frame = frameWith({}, 'back_door', bungalow)
  expect(text(frame, bungalow, 'A')).toContain('Smoke rises from a side that is not in view')
  expect(text(frame, bungalow, 'A')).not.toContain('Back door')
  expect(text(frame, bungalow, 'C')).toContain('Back door, open; smoke comes out')
})
