import { expect, test } from 'vitest'
import { DAY } from './draw/palette'
import { FIELDS, GRAIN_Y, TAU } from './fluid/grid'
import { FINENESS, type Picture } from './picture'
import { film, frameWith } from './scene-for-tests'
import { openArea } from './view'

// How much has left an opening grows without end, and what the smoke shows goes by it:
// it must not be wound up by that.

const LEFT_BEFORE = 1000 // lumps of some minutes
const SHOWN = 40 // of 255 hidden; less is the edge of the plume

/** How uneven smoke is from row to row a while above its opening, as a share of what it hides; of what goes on evenly nothing is left. */
function unevenness({ view, front, columns }: Picture): number {
  const place = view.layout.places.find(({ id }) => id === 'port_lower_left')!
  const { y0, y1 } = openArea(view, place, 1)
  const above = Math.floor(((y0 - (y1 - y0)) * columns) / view.widthM)
  const alpha = (p: number) => front[4 * p + 3]!
  let steps = 0
  let hidden = 0
  for (let p = columns; p < columns * above; p++) {
    if (Math.min(alpha(p), alpha(p - columns), alpha(p + columns)) < SHOWN) continue
    steps += Math.abs(2 * alpha(p) - alpha(p - columns) - alpha(p + columns))
    hidden += alpha(p)
  }
  return steps / hidden
}

/** The same smoke, a few steps on. */
function goOn(picture: Picture): number {
  for (let k = 0; k < 4; k++) {
    picture.step()
    picture.paint(DAY.smoke)
  }
  return unevenness(picture)
}

test('smoke that thins as it rises shows the same streaks after minutes as at first', () => {
  const picture = film(frameWith({ opticalDepth: 0.9, churning: 0.3, outVelocityMS: 0.6, outTempC: 120 }), 3, undefined, FINENESS[0])
  const atFirst = goOn(picture)
  const { now } = picture.grid.front
  for (let o = 0; o < now.length; o += FIELDS) now[o + GRAIN_Y]! += LEFT_BEFORE * now[o + TAU]!
  expect(goOn(picture)).toBeLessThan(1.2 * atFirst) // 1.7 times where streaks are stretched by how thin the smoke is
})
