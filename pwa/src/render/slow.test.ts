import { expect, test } from 'vitest'
import type { OpeningLook } from './frame'
import type { Picture } from './picture'
import { film, frameWith } from './scene-for-tests'
import { openArea } from './view'

const HALF_S = 15 // steps

/** What the upper half of the opening hides, in steps of 255, well away from its edges. */
function within({ view, front, columns }: Picture): number[] {
  const place = view.layout.places.find(({ id }) => id === 'port_lower_left')!
  const { x0, x1, y0, y1 } = openArea(view, place, 1)
  const perM = columns / view.widthM
  const [wide, high] = [(x1 - x0) * perM, (y1 - y0) * perM]
  const all: number[] = []
  for (let y = Math.ceil(y0 * perM + 0.15 * high); y < y0 * perM + 0.5 * high; y++) {
    for (let x = Math.ceil(x0 * perM + 0.2 * wide); x < x1 * perM - 0.2 * wide; x++) all.push(front[4 * (y * columns + x) + 3]!)
  }
  return all
}

/** Root mean square of its change over half a second. */
function change(look: Partial<OpeningLook>): number {
  const seen: number[][] = []
  film(frameWith({ outTempC: 60, lightness: 0.6, churning: 0.1, neutralPlane: 0.1, ...look }), 4, (picture) => { seen.push(within(picture)) })
  const now = seen.at(-1)!
  const before = seen.at(-1 - HALF_S)!
  return Math.sqrt(now.reduce((sum, alpha, p) => sum + (alpha - before[p]!) ** 2, 0) / now.length)
}

const SLOW = 0.05 * Math.sqrt(9.81 * 0.3) // the slowest that families make, m/s

// An eye tells contrasts of a hundredth or two of full white from none (from memory, to be confirmed).
const SEEN = 0.02 * 255

test('slow smoke has something to see it move by, thin or not', () => {
  for (const opticalDepth of [0.2, 1]) expect(change({ opticalDepth, outVelocityMS: SLOW }), `depth ${opticalDepth}`).toBeGreaterThan(SEEN)
})

test('smoke that stands shows no change', () => {
  expect(change({ opticalDepth: 1, outVelocityMS: 0.006 })).toBeLessThan(1)
})
