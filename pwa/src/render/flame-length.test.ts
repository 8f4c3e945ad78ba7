import { expect, test } from 'vitest'
import { flameLength } from './jet'
import { film, frameWith } from './scene-for-tests'
import { openArea } from './view'

const NEUTRAL = 0.2

/** How far above the neutral plane the highest flame of the last second is seen, in metres. */
function tipM(flameKW: number, outVelocityMS: number): number {
  const look = { flameKW, outVelocityMS, outTempC: 750, opticalDepth: 1, lightness: 0.3, churning: 0.4, neutralPlane: NEUTRAL }
  const { front, columns, rows, view, grid } = film(frameWith(look), 4)
  const place = view.layout.places.find(({ id }) => id === 'port_lower_left')!
  const { y0, y1 } = openArea(view, place, 1)
  const burns = (p: number) => front[p + 3]! > 64 && front[p]! > 110 && front[p]! > 2 * front[p + 2]!
  for (let y = 0; y < rows; y++) {
    for (let x = 0; x < columns; x++) {
      if (burns(4 * (y * columns + x))) return y1 - NEUTRAL * (y1 - y0) - (y * grid.cellM) / 2
    }
  }
  return 0
}

test('a flame is about as long as its heat makes it, and a fast one no longer than a slow one', () => {
  for (const kW of [15, 60]) {
    for (const speed of [0.7, 1.8]) {
      const share = tipM(kW, speed) / flameLength({ flameKW: kW })
      expect(share, `${kW} kW at ${speed} m/s`).toBeGreaterThan(0.55)
      expect(share, `${kW} kW at ${speed} m/s`).toBeLessThan(1.25)
    }
  }
})

test('without heat there is no flame', () => {
  expect(tipM(0, 1)).toBe(0)
})
