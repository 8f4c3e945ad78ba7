import { expect, test } from 'vitest'
import { film, frameWith } from './scene-for-tests'
import type { Picture } from './picture'
import { corners } from './view'

/** What is hidden along one row of the picture, 0 to 255, y picture metres from its top. */
function hiddenAlong({ front, columns, grid }: Picture, y: number): number[] {
  const row = Math.floor(y / (grid.cellM / 2))
  return Array.from({ length: columns }, (_, x) => front[4 * (row * columns + x) + 3]!)
}

test('smoke leaves a roof hatch as a plume: thickest in its middle and soft at its sides', () => {
  const picture = film(frameWith({ opticalDepth: 1, outVelocityMS: 1, outTempC: 300, flow: 2, churning: 0 }, 'roof_hatch'), 4)
  const place = picture.view.layout.places.find(({ id }) => id === 'roof_hatch')!
  const ys = corners(picture.view, place).map(({ y }) => y)
  const mouth = (Math.min(...ys) + Math.max(...ys)) / 2
  const row = hiddenAlong(picture, mouth)
  const most = Math.max(...row)
  const span = row.flatMap((value, x) => (value > 12 ? [x] : []))
  const [left, right] = [span[0]!, span.at(-1)!]
  expect(most).toBeGreaterThan(100)
  expect(row.indexOf(most)).toBeGreaterThan(left + (right - left) / 4)
  expect(row.indexOf(most)).toBeLessThan(right - (right - left) / 4)
  expect(Math.max(row[left]!, row[right]!)).toBeLessThan(0.65 * most)
})

/** The greatest step from one pixel of a row to the next. */
function steepest({ front, columns }: Picture): number {
  let most = 0
  for (let p = 4 * columns; p < front.length; p += 4) most = Math.max(most, Math.abs(front[p + 3]! - front[p - 1]!))
  return most
}

test('a flame has no edge of a single pixel, at any moment', () => {
  const burning = frameWith({ flameKW: 40, outTempC: 800, outVelocityMS: 1.6, opticalDepth: 0.2, lightness: 0.3, flow: 2, neutralPlane: 0 })
  const steps: number[] = []
  film(burning, 5, (picture) => { if (picture.timeS > 3) steps.push(steepest(picture)) })
  expect(Math.min(...steps)).toBeGreaterThan(20)
  expect(Math.max(...steps)).toBeLessThan(160)
})

/** How dark the darkest smoke is that hides at least a quarter of what it stands before, 0 to 255. */
function darkest({ front }: Picture): number {
  let least = 255
  for (let p = 0; p < front.length; p += 4) if (front[p + 3]! > 64) least = Math.min(least, front[p + 1]!)
  return least
}

test('pale smoke is pale to its rim, also where its lower boundary ripples', () => {
  const rippled = { opticalDepth: 4, churning: 1.4, neutralPlane: 0.5, outVelocityMS: 0.9 }
  expect(darkest(film(frameWith({ ...rippled, lightness: 0.8 }), 3))).toBeGreaterThan(110)
  expect(darkest(film(frameWith({ ...rippled, lightness: 0.1 }), 3))).toBeLessThan(60)
})
