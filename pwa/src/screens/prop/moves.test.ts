import { expect, test } from 'vitest'
import { box } from '../../buildings/box'
import { emptyFrame } from '../../render/frame'
import { differences } from './differences'
import { listed } from './moves'

test('what is dragged, and a fuel laid on straw, are one move to the eye', () => {
  const list = listed([
    { step: 0, move: { t_s: 0, fuel: 'straw', mass_kg: 0.05, in: 'lower_left' } },
    { step: 0, move: { t_s: 0, fuel: 'softwood', mass_kg: 2, in: 'lower_left' } },
    { step: 200, move: { t_s: 0, opening: 'port_lower_left', open: 0.8 } },
    { step: 204, move: { t_s: 0, opening: 'port_lower_left', open: 0.3 } },
    { step: 206, move: { t_s: 0, opening: 'floor_hole', open: 1 } },
    { step: 400, move: { t_s: 0, opening: 'port_lower_left', open: 0 } },
    { step: 500, move: { t_s: 0, wind_m_s: 5, wind_from: 'A' } },
    { step: 600, move: { t_s: 0, water_l: 0.1, in: 'lower_left' } },
  ], box)
  expect(list.map(({ tS, indexes, name }) => [tS, indexes, name])).toEqual([
    [0, [0, 1], 'Softwood strips laid and lit, lower left'],
    [10, [2, 3], 'Port lower left: 30 % open'],
    [10.3, [4], 'Floor hole: open'],
    [20, [5], 'Port lower left: shut'],
    [25, [6], 'Wind 5 m/s onto Alpha'],
    [30, [7], '100 ml of water, lower left'],
  ])
})

test('two fires in numbers: signs, equal values, and what there is none of', () => {
  const [a, b] = [emptyFrame(5, 9), emptyFrame(5, 9)]
  a.header.hrrKW = 42.04
  b.header.hrrKW = 42.02
  a.compartments[0]!.upperC = 600
  b.compartments[0]!.upperC = 210
  Object.assign(a.openings[0]!, { open: 1, flow: 3, neutralPlane: 0.44, outVelocityMS: 1 })
  Object.assign(b.openings[0]!, { open: 1, flow: 2, neutralPlane: NaN, outVelocityMS: 1.25 })
  const lines = differences(box, box.openings[0], a, b)
  expect(lines.map(({ first, second, between }) => [first, second, between])).toEqual([
    ['42 kW', '42 kW', 'the same'],
    ['600 °C', '210 °C', '−390 °C'],
    ['0.0 %', '0.0 %', 'the same'],
    ['44 %', 'none', ''],
    ['1.00 m/s', '1.25 m/s', '+0.25 m/s'],
    ['0 %', '0 %', 'the same'],
  ])
})

test('where there is no layer its film is not told for one', () => {
  const [clear, smoky] = [emptyFrame(2, 9), emptyFrame(2, 9)]
  for (const one of clear.compartments) Object.assign(one, { upperC: 300, lowerC: 21, interfaceM: NaN, o2Upper: 0.1 })
  for (const one of smoky.compartments) Object.assign(one, { upperC: 300, lowerC: 21, interfaceM: NaN, o2Upper: 0.1 })
  Object.assign(smoky.compartments[1]!, { interfaceM: 1, upperC: 180, o2Upper: 0.18 })
  const told = differences(box, undefined, clear, smoky).slice(1)
  expect(told.map(({ first, second, between }) => [first, second, between])).toEqual([
    ['21 °C', '180 °C', '+159 °C'],
    ['no layer', '18.0 %', ''],
  ])
})

test('what a shut opening lets out at its gaps is set against nothing', () => {
  const [shut, open] = [emptyFrame(5, 9), emptyFrame(5, 9)]
  Object.assign(shut.openings[0]!, { open: 0, flow: 2, outVelocityMS: 2.2, opticalDepth: 1 })
  Object.assign(open.openings[0]!, { open: 1, flow: 2, outVelocityMS: 1.3, opticalDepth: 2 })
  const told = differences(box, box.openings[0], shut, open).slice(-2)
  expect(told.map(({ first, second, between }) => [first, second, between])).toEqual([
    ['gaps only', '1.30 m/s', ''],
    ['gaps only', '86 %', ''],
  ])
})
