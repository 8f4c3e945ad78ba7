import type { Scenario } from '../wire.gen'

// The small box: two storeys, four compartments of 0.6 m, and a void under the
// roof, in 12 mm boards. Dimensions are chosen by us, to stand on a table and
// to burn on a handful of straw.

const CELL_M = 0.6
const VOID_M = 0.15

const cell = (id: string, x_m: number, floor_m: number) => ({
  id, width_m: CELL_M, depth_m: CELL_M, height_m: CELL_M, floor_m, lining: 'plywood', x_m, y_m: 0,
})

const port = (from: string) => ({
  id: `port_${from}`, from, to: 'outside', side: 'A' as const, kind: 'port' as const,
  sill_m: 0.15, width_m: 0.24, height_m: 0.3, open: 0,
})

export const box: Scenario = {
  v: 1,
  name: 'Small box',
  ambient: { t_c: 20 },
  compartments: [
    cell('lower_left', 0, 0), cell('lower_right', CELL_M, 0),
    cell('upper_left', 0, CELL_M), cell('upper_right', CELL_M, CELL_M),
    { id: 'void', width_m: 2 * CELL_M, depth_m: CELL_M, height_m: VOID_M, floor_m: 2 * CELL_M, lining: 'plywood', x_m: 0, y_m: 0 },
  ],
  openings: [
    { ...port('lower_left'), open: 1 }, port('lower_right'), port('upper_left'), port('upper_right'),
    { id: 'door_lower', from: 'lower_left', to: 'lower_right', kind: 'door', sill_m: 0, width_m: 0.2, height_m: 0.4, open: 0 },
    { id: 'door_upper', from: 'upper_left', to: 'upper_right', kind: 'door', sill_m: 0, width_m: 0.2, height_m: 0.4, open: 0 },
    { id: 'floor_hole', from: 'upper_left', to: 'lower_left', kind: 'floor_hole', area_m2: 0.0225, shape: 'square', open: 0 },
    { id: 'ceiling_hatch', from: 'upper_right', to: 'void', kind: 'ceiling_hatch', area_m2: 0.0225, shape: 'square', open: 0 },
    { id: 'roof_hatch', from: 'void', to: 'outside', kind: 'roof_hatch', area_m2: 0.04, shape: 'square', open: 0 },
  ],
  fuels: [],
  end_s: 3600,
}
