import type { Opening, Scenario, Side } from '../wire.gen'

// The small box: two storeys, four compartments of 0.6 m, and a void under the
// roof, in 12 mm boards. Dimensions are chosen by us: to stand on a table and to
// burn on a handful of straw.

const CELL_M = 0.6
const VOID_M = 0.15

const cell = (id: string, x_m: number, floor_m: number) => ({
  id, width_m: CELL_M, depth_m: CELL_M, height_m: CELL_M, floor_m, lining: 'plywood', x_m, y_m: 0,
})

const port = (from: string, open: number): Opening => ({
  id: `port_${from}`, from, to: 'outside', side: 'A' satisfies Side, kind: 'port',
  sill_m: 0.15, width_m: 0.24, height_m: 0.3, open,
})

const hatch = (id: string, kind: Opening['kind'], from: string, to: string, area_m2: number): Opening =>
  ({ id, from, to, kind, area_m2, shape: 'square', open: 0 })

const innerDoor = (id: string, from: string, to: string): Opening =>
  ({ id, from, to, kind: 'door', sill_m: 0, width_m: 0.2, height_m: 0.4, open: 0 })

export const box: Scenario = {
  v: 1,
  name: 'Small box',
  ambient: { t_c: 20 },
  compartments: [
    cell('lower_left', 0, 0), cell('lower_right', CELL_M, 0),
    cell('upper_left', 0, CELL_M), cell('upper_right', CELL_M, CELL_M),
    {
      id: 'void', width_m: 2 * CELL_M, depth_m: CELL_M, height_m: VOID_M, floor_m: 2 * CELL_M, lining: 'plywood',
      x_m: 0, y_m: 0,
    },
  ],
  openings: [
    port('lower_left', 1), port('lower_right', 0), port('upper_left', 0), port('upper_right', 0),
    innerDoor('door_lower', 'lower_left', 'lower_right'), innerDoor('door_upper', 'upper_left', 'upper_right'),
    hatch('floor_hole', 'floor_hole', 'upper_left', 'lower_left', 0.0225),
    hatch('ceiling_hatch', 'ceiling_hatch', 'upper_right', 'void', 0.0225),
    hatch('roof_hatch', 'roof_hatch', 'void', 'outside', 0.04),
  ],
  fuels: [],
  end_s: 3600,
}
