import type { Compartment, Opening, Scenario, Side } from '../wire.gen'

// Two full-size houses. Sizes are those of ordinary small dwellings, rounded to
// 0.1 m (chosen by us): storeys 2.4 m high, doors 0.9 m by 2.0 m, windows with
// their sill at 0.9 m. The attic is a box of the mean height of its pitched roof.

const STOREY_M = 2.4
const FLOOR_M = 0.25 // thickness of the floor between storeys
const ATTIC_M = 0.9

const room = (id: string, x_m: number, y_m: number, width_m: number, depth_m: number, floor_m = 0): Compartment =>
  ({ id, width_m, depth_m, height_m: STOREY_M, floor_m, lining: 'gypsum', x_m, y_m })

const attic = (width_m: number, depth_m: number, floor_m: number): Compartment =>
  ({ id: 'attic', width_m, depth_m, height_m: ATTIC_M, floor_m, lining: 'osb', x_m: 0, y_m: 0 })

const frontDoor = (from: string, side: Side, id: string): Opening =>
  ({ id, from, to: 'outside', side, kind: 'door', sill_m: 0, width_m: 0.9, height_m: 2, open: 0 })

const window = (id: string, from: string, side: Side, width_m = 1.4): Opening =>
  ({ id, from, to: 'outside', side, kind: 'window', sill_m: 0.9, width_m, height_m: 1.2, open: 0 })

const inner = (id: string, from: string, to: string, open = 1, width_m = 0.8): Opening =>
  ({ id, from, to, kind: 'door', sill_m: 0, width_m, height_m: 2, open })

const gableVent = (id: string, side: Side): Opening =>
  ({ id, from: 'attic', to: 'outside', side, kind: 'leak', sill_m: 0.4, width_m: 0.3, height_m: 0.3, open: 1 })

const hatch = (id: string, kind: Opening['kind'], from: string, to: string, area_m2: number, open = 0): Opening =>
  ({ id, from, to, kind, area_m2, shape: 'square', open })

export const bungalow: Scenario = {
  v: 1,
  name: 'One-storey house',
  ambient: { t_c: 15 },
  compartments: [
    room('living_room', 0, 0, 4.8, 4.2), room('kitchen', 0, 4.2, 4.8, 3), room('hall', 4.8, 0, 1.2, 7.2),
    room('front_bedroom', 6, 0, 3.6, 3.6), room('rear_bedroom', 6, 3.6, 3.6, 3.6), attic(9.6, 7.2, STOREY_M),
  ],
  openings: [
    frontDoor('hall', 'A', 'front_door'), frontDoor('kitchen', 'C', 'back_door'),
    window('living_room_window', 'living_room', 'A', 1.8), window('living_room_side_window', 'living_room', 'B'),
    window('front_bedroom_window', 'front_bedroom', 'A'), window('rear_bedroom_window', 'rear_bedroom', 'C'),
    inner('living_room_door', 'living_room', 'hall'), inner('kitchen_door', 'living_room', 'kitchen'),
    inner('front_bedroom_door', 'front_bedroom', 'hall', 0), inner('rear_bedroom_door', 'rear_bedroom', 'hall'),
    hatch('ceiling_hatch', 'ceiling_hatch', 'hall', 'attic', 0.36),
    gableVent('bravo_gable_vent', 'B'), gableVent('delta_gable_vent', 'D'),
    hatch('roof_opening', 'roof_hatch', 'attic', 'outside', 1.44),
  ],
  fuels: [],
  end_s: 3600,
}

const UPPER_M = STOREY_M + FLOOR_M

export const twoStorey: Scenario = {
  v: 1,
  name: 'Two-storey house',
  ambient: { t_c: 15 },
  compartments: [
    room('living_room', 0, 0, 4.5, 4), room('kitchen', 0, 4, 4.5, 3.2), room('hall', 4.5, 0, 2.4, 7.2),
    room('front_bedroom', 0, 0, 4.5, 4, UPPER_M), room('rear_bedroom', 0, 4, 4.5, 3.2, UPPER_M),
    room('landing', 4.5, 0, 2.4, 7.2, UPPER_M), attic(6.9, 7.2, UPPER_M + STOREY_M),
  ],
  openings: [
    frontDoor('hall', 'A', 'front_door'), frontDoor('kitchen', 'C', 'back_door'),
    window('living_room_window', 'living_room', 'A', 1.8), window('kitchen_window', 'kitchen', 'B'),
    window('front_bedroom_window', 'front_bedroom', 'A'), window('rear_bedroom_window', 'rear_bedroom', 'C'),
    window('landing_window', 'landing', 'D', 0.9),
    inner('living_room_door', 'living_room', 'hall'), inner('kitchen_door', 'kitchen', 'hall'),
    inner('front_bedroom_door', 'front_bedroom', 'landing'), inner('rear_bedroom_door', 'rear_bedroom', 'landing', 0),
    hatch('stairwell', 'floor_hole', 'landing', 'hall', 2.4, 1),
    hatch('ceiling_hatch', 'ceiling_hatch', 'landing', 'attic', 0.36),
    gableVent('bravo_gable_vent', 'B'), gableVent('delta_gable_vent', 'D'),
    hatch('roof_opening', 'roof_hatch', 'attic', 'outside', 1.44),
  ],
  fuels: [],
  end_s: 3600,
}
