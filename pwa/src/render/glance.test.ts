import { expect, test } from 'vitest'
import type { OpeningLook } from './frame'
import { FINENESS, type Picture } from './picture'
import { film, frameWith } from './scene-for-tests'
import { openArea } from './view'

// What an eye goes by on one still: how uneven the face of the smoke is.

/** How uneven the face of the outflow is up and down: the mean change of brightness over a tenth of its height, as a share of the mean. */
function contrast({ view, front, columns }: Picture): number {
  const place = view.layout.places.find(({ id }) => id === 'port_lower_left')!
  const { x0, x1, y0, y1 } = openArea(view, place, 1)
  const perM = columns / view.widthM
  const [wide, high] = [(x1 - x0) * perM, (y1 - y0) * perM]
  const bright = (x: number, y: number) => front[4 * (y * columns + x) + 1]!
  const apart = Math.round(0.1 * high)
  let sum = 0
  let changes = 0
  for (let y = Math.ceil(y0 * perM + 0.1 * high); y < y0 * perM + 0.4 * high; y++) {
    for (let x = Math.ceil(x0 * perM + 0.15 * wide); x < x1 * perM - 0.15 * wide; x++) {
      sum += bright(x, y)
      changes += Math.abs(bright(x, y + apart) - bright(x, y))
    }
  }
  return changes / sum
}

const ofStill = (look: Partial<OpeningLook>) => contrast(film(frameWith(look), 3, undefined, FINENESS[0]))

const CALM = { outVelocityMS: 0.26, churning: 0.3, outTempC: 120 }
const BOILING = { outVelocityMS: 0.86, churning: 1.4, outTempC: 320 }

test.each([['grey', { opticalDepth: 2, lightness: 0.45 }], ['dark', { opticalDepth: 4, lightness: 0.15 }]])('%s smoke that churns stands out from smoke that flows smoothly, on one still', (_, smoke) => {
  const calm = ofStill({ ...smoke, ...CALM })
  expect(ofStill({ ...smoke, ...BOILING })).toBeGreaterThan(1.8 * calm)
  expect(ofStill({ ...smoke, ...CALM, outTempC: 100 })).toBeLessThan(1.3 * calm) // and one calm stream does not from another
})
