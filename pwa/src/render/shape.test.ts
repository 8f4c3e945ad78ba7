import { expect, test } from 'vitest'
import { FINENESS, shapeOf } from './picture'

const ASPECTS = [0.62, 0.85, 0.9, 1, 1.07, 1.33, 1.6, 1.78, 2.1]

test('smoke is not stretched to the breadth of its picture, however coarse', () => {
  for (const cells of FINENESS) {
    for (const aspect of ASPECTS) {
      const { nx, ny } = shapeOf(aspect, cells)
      expect(Math.abs(nx / (ny * aspect) - 1), `${cells} cells at ${aspect}`).toBeLessThan(0.011)
      expect(4 * nx * ny / cells, `${cells} cells at ${aspect}`).toBeGreaterThan(0.8)
      expect(4 * nx * ny / cells, `${cells} cells at ${aspect}`).toBeLessThan(1.05)
    }
  }
})

test('the nearest number of rows alone would stretch it by more', () => {
  const worst = Math.max(...ASPECTS.map((aspect) => {
    const rows = Math.round(Math.sqrt(3000 / aspect) / 2)
    return Math.abs(Math.round(rows * aspect) / (rows * aspect) - 1)
  }))
  expect(worst).toBeGreaterThan(0.011)
})
