import { expect, test } from 'vitest'
import { box } from '../buildings/box'
import { DAY } from './draw/palette'
import { layOut } from './layout'
import { Picture } from './picture'
import { CELLS, film, frameWith, hash } from './scene-for-tests'
import { frameView, openArea } from './view'

/** Mean of one channel over the outflow of the lower left port: 0 to 2 are colours, 3 is what is hidden. */
function overPort(picture: Picture, channel: number): number {
  const place = picture.view.layout.places[0]!
  const area = openArea(picture.view, place, 1)
  const cell = picture.grid.cellM / 2
  const bottom = area.y0 + 0.4 * (area.y1 - area.y0)
  let sum = 0
  let n = 0
  for (let y = area.y0 + cell; y < bottom; y += cell) {
    for (let x = area.x0 + cell; x < area.x1 - cell; x += cell) {
      sum += picture.front[4 * (Math.floor(y / cell) * picture.columns + Math.floor(x / cell)) + channel]!
      n++
    }
  }
  return sum / n
}

/** Cells that smoke covers by more than a tenth. */
const covered = (picture: Picture) => picture.front.filter((value, k) => k % 4 === 3 && value > 25).length

/** Height of the topmost smoke, as a share of the picture. */
function reach(picture: Picture): number {
  for (let k = 3; k < picture.front.length; k += 4) {
    if (picture.front[k]! > 12) return 1 - Math.floor(k / 4 / picture.columns) / picture.rows
  }
  return 0
}

const rises = (values: number[]) => values.every((value, k) => k === 0 || value > values[k - 1]!)

test('the same frames give the same pixels, other frames give others', () => {
  const once = hash(film(frameWith({}), 3).front)
  expect(hash(film(frameWith({}), 3).front)).toBe(once)
  expect(hash(film(frameWith({ opticalDepth: 2.2 }), 3).front)).not.toBe(once)
})

test('nothing is drawn where nothing comes out', () => {
  const picture = film(frameWith({ opticalDepth: 0, outVelocityMS: 0, flow: 1 }), 2)
  expect(picture.front.some((value) => value !== 0)).toBe(false)
})

test('more optical depth hides more', () => {
  const hidden = [0.1, 0.4, 1, 2.5, 6].map((opticalDepth) => overPort(film(frameWith({ opticalDepth }), 2), 3))
  expect(rises(hidden), `${hidden}`).toBe(true)
})

// Beer-Lambert: smoke of optical depth tau lets exp(-tau) of the light through
// (Bouguer 1729; physics of any smoke meter). Grain makes single cells differ;
// the mean over the opening stays within a tenth.
test.each([0.2, 0.7, 1.5, 3])('at optical depth %f the opening is hidden by 1 - exp(-tau)', (opticalDepth) => {
  const picture = film(frameWith({ opticalDepth, churning: 0 }), 2)
  expect(Math.abs(overPort(picture, 3) / 255 - (1 - Math.exp(-opticalDepth)))).toBeLessThan(0.1)
})

test('lighter smoke is drawn lighter, step by step', () => {
  const greys = [0.05, 0.3, 0.55, 0.8, 1].map((lightness) => overPort(film(frameWith({ lightness, opticalDepth: 5 }), 2), 1))
  expect(rises(greys), `${greys}`).toBe(true)
})

test('lightness does not change how much is hidden, nor depth how light it is', () => {
  const dark = film(frameWith({ lightness: 0.1, opticalDepth: 3 }), 2)
  const pale = film(frameWith({ lightness: 0.9, opticalDepth: 3 }), 2)
  expect(overPort(dark, 3)).toBe(overPort(pale, 3))
  const thin = film(frameWith({ lightness: 0.5, opticalDepth: 1.2, churning: 0 }), 2)
  const thick = film(frameWith({ lightness: 0.5, opticalDepth: 8, churning: 0 }), 2)
  expect(Math.abs(overPort(thin, 1) / overPort(thick, 1) - 1)).toBeLessThan(0.05)
})

test('faster smoke gets farther in the same time', () => {
  const heights = [0.15, 0.4, 0.9, 1.8].map((outVelocityMS) => reach(film(frameWith({ outVelocityMS, outTempC: 60 }), 0.8)))
  expect(rises(heights), `${heights}`).toBe(true)
})

test('a wider open port shows a wider stream', () => {
  const areas = [0.25, 0.5, 1].map((open) => covered(film(frameWith({ open }), 1)))
  expect(rises(areas), `${areas}`).toBe(true)
})

test('steam vanishes and smoke stays', () => {
  const steam = covered(film(frameWith({ steam: 1, opticalDepth: 3 }), 5))
  const smoke = covered(film(frameWith({ steam: 0, opticalDepth: 3 }), 5))
  expect(steam).toBeLessThan(0.5 * smoke)
})

test('wind from the left carries smoke to the right, from the right to the left', () => {
  const lean = (from: 'B' | 'D') => {
    const picture = new Picture(box, frameView(layOut(box), 'A', 0.85), CELLS)
    picture.wind(3, from)
    const frame = frameWith({})
    for (let k = 0; k < 60; k++) {
      picture.follow(frame)
      picture.step()
    }
    picture.paint(DAY.smoke)
    let sum = 0
    let moment = 0
    for (let p = 0; p < picture.front.length / 4; p++) {
      sum += picture.front[4 * p + 3]!
      moment += picture.front[4 * p + 3]! * (p % picture.columns)
    }
    return moment / sum / picture.columns
  }
  expect(lean('B')).toBeGreaterThan(lean('D') + 0.1)
})

test('a coarser grid shows the same smoke: as dense, as light', () => {
  const shown = [14000, 5000].map((cells) => {
    const picture = new Picture(box, frameView(layOut(box), 'A', 0.85), cells)
    const frame = frameWith({ opticalDepth: 2, churning: 0 })
    for (let k = 0; k < 60; k++) {
      picture.follow(frame)
      picture.step()
    }
    picture.paint(DAY.smoke)
    return [overPort(picture, 3), overPort(picture, 1)] as const
  })
  expect(Math.abs(shown[0]![0] / shown[1]![0] - 1)).toBeLessThan(0.08)
  expect(Math.abs(shown[0]![1] / shown[1]![1] - 1)).toBeLessThan(0.05)
})
