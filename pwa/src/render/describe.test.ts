import { expect, test } from 'vitest'
import { box } from '../buildings/box'
import { bungalow } from '../buildings/houses'
import { frameLength, readFrame, type CompartmentLook } from './frame'
import { frameWith } from './scene-for-tests'
import { describe } from './describe'
import book from '../generated/scales.json'
import { OPENING } from '../wire.gen'

const text = (...args: Parameters<typeof describe>) => describe(...args).join(' ')

test('says what shows at each opening of the side', () => {
  const said = text(frameWith({ opticalDepth: 1.2, lightness: 0.3, darkness: 4, outVelocityMS: 0.3 }), box, 'A')
  expect(said).toContain('Port lower left is open. Smoke comes out over the upper 6 tenths of it.')
  expect(said).toContain('hides 7 tenths')
  expect(said).toContain('in a second')
  expect(said).toContain('7 tenths of the way from white to black')
  expect(said).toContain('Air is drawn in below.')
  expect(said).toContain('Port upper right is shut. Nothing comes out of it.')
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
  expect(text(frame, bungalow, 'C')).toContain('Back door is open. Smoke comes out')
})

test('the words follow a frame that is filled again and again', () => {
  const port = box.openings.findIndex(({ id }) => id === 'port_lower_left')
  const values = new Float64Array(frameLength(box.compartments.length, box.openings.length))
  const frame = readFrame(values, box.compartments.length, box.openings.length)
  const cold = text(frame, box, 'A')
  const at = values.length - (box.openings.length - port) * (values.length - frameLength(box.compartments.length, 0)) / box.openings.length
  Object.assign(values, { [at + OPENING.Open]: 1, [at + OPENING.Flow]: 2, [at + OPENING.OutVelocityMS]: 1, [at + OPENING.OpticalDepth]: 3 })
  const lit = text(readFrame(values, box.compartments.length, box.openings.length, frame), box, 'A')
  expect(cold).toContain('Port lower left is shut. Nothing comes out')
  expect(lit).toContain('Port lower left is open. Smoke comes out')
})

test('what is shut draws air in at its gaps, and a roof hatch has no below', () => {
  expect(text(frameWith({ open: 0, flow: 1, opticalDepth: 0 }), box, 'A')).toContain('Port lower left is shut. Air is drawn in at its gaps.')
  const hatch = text(frameWith({ flow: 3 }, 'roof_hatch'), box, 'A').split('Roof hatch')[1]!
  expect(hatch).toContain('Smoke rises out of all of it and stands in a column.')
  expect(hatch).toContain('Air is drawn down into it.')
  expect(hatch).not.toMatch(/below|upper/)
})

test('never says what a level of a scale is called or looks like', () => {
  const levels = book.scales.flatMap((one) => one.levels).filter(({ level }) => level > 0)
  for (const level of [1, 2, 3, 4]) {
    const said = text(frameWith({ opticalDepth: 2 ** level / 4, lightness: 1 - level / 4.2, volume: level, velocity: level, density: level, darkness: level }), box, 'A').toLowerCase()
    for (const { looks } of levels) expect(said).not.toContain(looks.replace(/\.$/, '').toLowerCase())
  }
})

test('tells a pane that is clear, smoky, stained, cracked and broken out', () => {
  const pane = (look: Parameters<typeof frameWith>[0], upperC: number, tS: number, room: Partial<CompartmentLook> = {}) => {
    const frame = frameWith(look, 'living_room_window', bungalow)
    frame.header.tS = tS
    Object.assign(frame.compartments[0]!, { upperC, interfaceM: 1 }, room)
    return text(frame, bungalow, 'A').split('Living room window')[1]!.split('Front bedroom')[0]!
  }
  expect(pane({ open: 0, extinctionM: 0, opticalDepth: 0 }, 15, 0)).toContain('Its glass is clear.')
  expect(pane({ open: 0, extinctionM: 1 }, 120, 20)).toContain('Smoke stands behind its glass, over the upper 9 tenths of it.')
  expect(pane({ open: 0, extinctionM: 12 }, 200, 600)).toContain('film on its glass hides 7 tenths')
  expect(pane({ open: 0, extinctionM: 12 }, 500, 600)).toContain('Fine cracks run through its glass.')
  expect(pane({ open: 1, extinctionM: 12 }, 500, 600)).toContain('Its glass has broken out.')
  expect(pane({ open: 0, extinctionM: 12 }, 500, 600, { interfaceM: NaN, lowerC: 20 })).not.toContain('cracks')
  expect(pane({ open: 0, extinctionM: 12 }, 500, 600, { interfaceM: NaN, lowerC: 500 })).toContain('cracks')
})

test('slow smoke below an eave banks under it, driven smoke passes it', () => {
  const said = (outVelocityMS: number, outTempC: number) => text(frameWith({ outVelocityMS, outTempC }, 'living_room_window', bungalow), bungalow, 'A')
  expect(said(0.5, 90)).toContain('It spreads under the eave')
  expect(said(4, 500)).not.toContain('eave')
})

test('says the light, the distance and which way the wind bends the smoke', () => {
  const said = describe(frameWith({}), box, 'A', { far: true, light: 'night', wind: { m_s: 4, from: 'B' } }).join(' ')
  expect(said).toContain('from across the road')
  expect(said).toContain('It is night')
  expect(said).toContain('The wind blows from the left. It bends the smoke to the right.')
})
