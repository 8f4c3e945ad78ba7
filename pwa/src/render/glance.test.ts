import { expect, test } from 'vitest'
import type { OpeningLook } from './frame'
import type { Picture } from './picture'
import { film, frameWith } from './scene-for-tests'
import { openArea } from './view'

// What an eye goes by on one still: how uneven the face of the smoke is.

/** How unevenly bright the outflow is: its standard deviation, as a share of the mean. */
function contrast({ view, front, columns }: Picture): number {
  const place = view.layout.places.find(({ id }) => id === 'port_lower_left')!
  const { x0, x1, y0, y1 } = openArea(view, place, 1)
  const perM = columns / view.widthM
  const [wide, high] = [(x1 - x0) * perM, (y1 - y0) * perM]
  const bright: number[] = []
  for (let y = Math.ceil(y0 * perM + 0.1 * high); y < y0 * perM + 0.5 * high; y++) {
    for (let x = Math.ceil(x0 * perM + 0.15 * wide); x < x1 * perM - 0.15 * wide; x++) bright.push(front[4 * (y * columns + x) + 1]!)
  }
  const mean = bright.reduce((sum, one) => sum + one, 0) / bright.length
  return Math.sqrt(bright.reduce((sum, one) => sum + (one - mean) ** 2, 0) / bright.length) / mean
}

const ofStill = (look: Partial<OpeningLook>) => contrast(film(frameWith(look), 3))

const CALM = { outVelocityMS: 0.26, churning: 0.3, outTempC: 120 }
const BOILING = { outVelocityMS: 0.86, churning: 1.4, outTempC: 320 }

test.each([['grey', { opticalDepth: 2, lightness: 0.45 }], ['dark', { opticalDepth: 4, lightness: 0.15 }]])('%s smoke that churns stands out from smoke that flows smoothly, on one still', (_, smoke) => {
  const calm = ofStill({ ...smoke, ...CALM })
  expect(ofStill({ ...smoke, ...BOILING })).toBeGreaterThan(2.4 * calm)
  expect(ofStill({ ...smoke, ...CALM, outTempC: 100 })).toBeLessThan(1.3 * calm) // and one calm stream does not from another
})
