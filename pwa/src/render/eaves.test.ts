import { expect, test } from 'vitest'
import { twoStorey } from '../buildings/houses'
import { DAY } from './draw/palette'
import { eavesOf, holdOf } from './eaves'
import { layOut } from './layout'
import { FINENESS, Picture } from './picture'
import { CELLS, frameWith } from './scene-for-tests'
import { frameView } from './view'

const view = frameView(layOut(twoStorey), 'A', 0.85)
const [eave] = eavesOf(view)

/** Share of the smoke that is above the eave after some seconds. */
function above(outVelocityMS: number, outTempC: number, cells = CELLS): number {
  const picture = new Picture(twoStorey, view, cells)
  const frame = frameWith({ outVelocityMS, outTempC, flow: 2, neutralPlane: 0, churning: 0.5 }, 'front_bedroom_window', twoStorey)
  for (let k = 0; k < 150; k++) {
    picture.follow(frame)
    picture.step()
  }
  picture.paint(DAY.smoke)
  const edge = Math.floor(eave!.y / (picture.grid.cellM / 2)) * picture.columns * 4
  let over = 0
  let all = 0
  for (let p = 3; p < picture.front.length; p += 4) {
    all += picture.front[p]!
    if (p < edge) over += picture.front[p]!
  }
  return over / all
}

test('an eave runs along the wall below the slope, none along a gable, none on the box', () => {
  expect(eavesOf(view)).toHaveLength(1)
  expect(eave!.x1 - eave!.x0).toBeCloseTo(6.9 + 2 * 0.35)
  expect(eavesOf(frameView(layOut(twoStorey), 'B', 0.85))).toHaveLength(0)
})

test('what is thrown out past the eave is not held, what creeps up the wall is', () => {
  const area = { x0: eave!.x0 + 1, x1: eave!.x0 + 2, y0: eave!.y + 0.3 }
  expect(holdOf(eave!, area, 4, 0.6)).toBe(0)
  expect(holdOf(eave!, area, 0.3, 0.2)).toBeGreaterThan(0.6)
  expect(holdOf(eave!, { ...area, y0: eave!.y - 0.5 }, 0.3, 0.2)).toBe(0) // above it
})

test('slow smoke banks under the eave; fast smoke stands above it', () => {
  expect(above(0.3, 80)).toBeLessThan(0.5)
  expect(above(4, 500)).toBeGreaterThan(0.75)
})

test('coarse cells, on which a picture starts ahead, hold no more smoke under an eave than fine ones', () => {
  expect(Math.abs(above(0.3, 80, FINENESS[3]) - above(0.3, 80, FINENESS[0]))).toBeLessThan(0.07)
})

test('a roof of several rooms has one edge', () => {
  const rooms = [0, 3, 6].map((x_m, k) => ({ id: `room_${k}`, x_m, y_m: 0, width_m: 3, depth_m: 4, height_m: 2.4, floor_m: 0, lining: 'plasterboard' }))
  const low = { ...rooms[0]!, id: 'low', x_m: 9, height_m: 2.2 }
  const edges = eavesOf(frameView(layOut({ compartments: [...rooms, low], openings: [] }), 'A', 0.85))
  expect(edges.map(({ x0, x1 }) => x1 - x0)).toEqual([expect.closeTo(9.5), expect.closeTo(3.5)])
})
