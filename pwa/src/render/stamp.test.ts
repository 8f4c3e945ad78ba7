import { expect, test, vi } from 'vitest'
import { FIELDS, FIRE, GRAIN_Y, makeGrid, TAU } from './fluid/grid'
import { STEP_S } from './fluid/step'
import { stillOpening } from './frame'
import type { Jet } from './jet'
import { noiseOf } from './noise'
import { stamp } from './stamp'

vi.setConfig({ testTimeout: 60_000 }) // also on a machine that is busy

const SPEED = 0.6 // m/s
const HIGH = 0.4 // m

/** An opening that smokes down to a plane. */
const jetDownTo = (plane: number, speed: number, depth: number): Jet => ({
  area: { x0: 0.3, x1: 0.7, y0: 0.4, y1: 0.4 + HIGH }, facing: 'eye', plane, churn: 0, depth, share: 1, outsideC: 20, seed: 1,
  look: { ...stillOpening(), open: 1, flow: 3, outVelocityMS: speed, opticalDepth: depth, lightness: 0.5, outTempC: 120 },
})

const LEFT_BEFORE = 100 // a minute's lumps

/** Lumps that pass just below the lintel in each step of a second; the plane goes as it is told. */
function passing(planeAt: (time: number) => number, speed = SPEED, depth = 2): number[] {
  const grid = makeGrid(40, 40, 1 / 40)
  const noise = noiseOf(1)
  noise.makeReady()
  const cell = (Math.floor((0.4 + 0.02) / (grid.cellM / 2)) * grid.fineRow + Math.floor(0.5 / (grid.cellM / 2))) * FIELDS
  const counts: number[] = []
  let left = LEFT_BEFORE
  for (let k = 0; k * STEP_S < 1; k++) {
    left += stamp(grid, jetDownTo(planeAt(k * STEP_S), speed, depth), left, noise, k * STEP_S)
    counts.push(grid.front.now[cell + GRAIN_Y]! / grid.front.now[cell + TAU]!)
  }
  return counts.slice(1).map((count, k) => count - counts[k]!)
}

const bottom = 0.4 + HIGH
/** Lumps are 0.62 of the lesser side of the outflow: here of what is above the plane. */
const perStep = (band: number) => (SPEED * STEP_S) / (0.62 * band)

test('lumps pass as fast as the gas leaves', () => {
  for (const band of [0.25, 0.35]) {
    for (const lumps of passing(() => bottom - HIGH + band)) expect(lumps).toBeCloseTo(perStep(band), 3)
  }
})

test('a plane that moves does not let the lumps that left long ago run past', () => {
  const sinks = (time: number) => bottom - HIGH + 0.25 + 0.1 * time
  const lumps = passing(sinks)
  expect(Math.max(...lumps)).toBeLessThan(1.1 * perStep(0.25))
  expect(Math.min(...lumps)).toBeGreaterThan(0.9 * perStep(0.35))
})

test('in thin smoke lumps follow each other a quarter closer', () => {
  for (const lumps of passing(() => bottom - HIGH + 0.25, SPEED, 0.2)) expect(lumps).toBeCloseTo(1.25 * perStep(0.25), 3)
})

test('there are more than two pictures to each lump, however fast smoke is', () => {
  for (const speed of [3, 12]) for (const lumps of passing(() => bottom - HIGH + 0.25, speed)) expect(lumps).toBeCloseTo(0.4, 3)
})

test('a long flame dies out downward and ends on no line above the smoke it comes with', () => {
  const grid = makeGrid(40, 40, 1 / 40)
  const noise = noiseOf(1)
  noise.makeReady()
  const jet = jetDownTo(bottom, 2, 3)
  for (let k = 0; k < 20; k++) stamp(grid, { ...jet, look: { ...jet.look, flameKW: 300 } }, LEFT_BEFORE + k, noise, k * STEP_S)
  const fineM = grid.cellM / 2
  const column = [...Array(Math.round(HIGH / fineM)).keys()].map((j) => {
    const y = Math.ceil(0.4 / fineM) + 1 + j
    return grid.front.now[(y * grid.fineRow + Math.round(0.5 / fineM)) * FIELDS + FIRE]!
  })
  const most = Math.max(...column)
  expect(most).toBeGreaterThan(0.5)
  const dying = column.filter((fire) => fire > 0.1 * most && fire < 0.7 * most).length
  expect(dying * fineM).toBeGreaterThan(0.15 * HIGH)
  expect(column.at(-2)).toBeLessThan(0.3 * most)
})
