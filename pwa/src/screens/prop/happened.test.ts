import { expect, test } from 'vitest'
import { box } from '../../buildings/box'
import { bungalow } from '../../buildings/houses'
import type { Event } from '../../wire.gen'
import { happened } from './happened'

const event = (t_s: number, kind: string, where: string, cause = ''): Event => ({ t_s, kind, where, cause })

test('writes names for ids, and units as they are written', () => {
  const cause = 'port_upper_left opened 12 s before; upper layer 552 C, 21 kW/m2 at the floor'
  const [line] = happened([event(85, 'ventilation_induced_flashover', 'upper_left', cause)], box)
  expect(line).toEqual({
    tS: 85, what: 'Ventilation-induced flashover', where: 'upper left',
    cause: 'Port upper left opened 12 s before; upper layer 550 °C, 21 kW/m² at the floor',
  })
})

test('every kind that the engine tells has words of its own', () => {
  const kinds = ['flashover', 'backdraft', 'backdraft_conditions', 'smoke_explosion_conditions', 'extinction', 're_growth']
  const said = kinds.map((kind, k) => happened([event(k, kind, 'hall')], bungalow)[0]!.what)
  expect(said).toEqual([
    'Flashover', 'Backdraft', 'Conditions for backdraft', 'Conditions for smoke explosion', 'The flame went out', 'It grew again',
  ])
})

test('one event in two rooms is one line; the same kind later is another', () => {
  const lines = happened([event(60, 'flashover', 'living_room'), event(64, 'flashover', 'hall'), event(200, 'flashover', 'hall')], bungalow)
  expect(lines.map(({ tS, where }) => [tS, where])).toEqual([[60, 'living room, hall'], [200, 'hall']])
})
