import { expect, test } from 'vitest'
import { box } from '../buildings/box'
import type { Scenario } from '../wire.gen'
import { layOut } from './layout'
import { cellsFor, FINENESS, Picture, timesFor } from './picture'
import { frameView } from './view'

/** A hall with one window of some height in its long side. */
const hall = (heightM: number): Scenario => ({
  v: 1, name: 'hall', ambient: { t_c: 15 }, end_s: 60, fuels: [], moves: [],
  compartments: [{ id: 'hall', width_m: 19, depth_m: 14, height_m: 5, floor_m: 0, lining: 'brick' }],
  openings: [{ id: 'window', from: 'hall', to: 'outside', side: 'C', kind: 'window', sill_m: 2, width_m: 4, height_m: heightM, open: 1 }],
} as unknown as Scenario)

const viewOf = (scenario: Scenario) => frameView(layOut(scenario), 'C', 0.85)

test('a low window in a large wall has the picture drawn on more cells, so that its smoke is seen to move', () => {
  const low = viewOf(hall(1))
  const before = Math.sqrt(FINENESS[0] / (low.widthM * low.heightM))
  const picture = new Picture(hall(1), low)
  expect(before).toBeLessThan(7)
  expect(2 / picture.grid.cellM).toBeGreaterThan(9)
  expect(cellsFor(low, 0)).toBeLessThanOrEqual(2.5 * FINENESS[0])
})

test('where no opening is low, no more cells are spent', () => {
  expect(timesFor(viewOf(hall(4)))).toBe(1)
  expect(timesFor(frameView(layOut(box), 'A', 0.85))).toBe(1)
})

test('a coarser picture of the same wall stays as many times as fine', () => {
  const view = viewOf(hall(1))
  expect(cellsFor(view, 3) / FINENESS[3]).toBeCloseTo(cellsFor(view, 0) / FINENESS[0])
})
