import { expect, test } from 'vitest'
import { countFlashes, turns } from '../lib/flash.mjs'

const PER_SECOND = 30
const wave = (hertz, low, high, seconds = 2) =>
  Array.from({ length: seconds * PER_SECOND }, (_, k) => (Math.sin((2 * Math.PI * hertz * k) / PER_SECOND) > 0 ? high : low))

/** Frames of 100 by 80 places of 5 pixels in which the first `share` of a field flashes. */
function frames(values, columns, rows) {
  return values.map((value) => Float32Array.from({ length: 100 * 80 }, (_, p) => (p % 100 < columns && Math.floor(p / 100) < rows ? value : 0.5)))
}
const of = (values, columns = 100, rows = 80) => countFlashes(frames(values, columns, rows), { width: 100, side: 5, perSecond: PER_SECOND })

// WCAG 2.2, SC 2.3.1: "no more than three flashes in any one second period".
test.each([[1, 1], [2, 2], [3, 3]])('%i flashes a second are %i', (hertz, count) => {
  expect(of(wave(hertz, 0.1, 0.6)).field).toBe(count)
})

test.each([4, 5, 10])('a strobe of %i a second trips', (hertz) => {
  expect(of(wave(hertz, 0.1, 0.6)).field).toBeGreaterThan(3)
})

test('a change of under a tenth is no flash, nor one between bright and brighter', () => {
  expect(of(wave(8, 0.5, 0.59))).toEqual({ anywhere: 0, field: 0 })
  expect(of(wave(8, 0.82, 0.99))).toEqual({ anywhere: 0, field: 0 })
})

test('a slow swell in small steps is one change, not many', () => {
  expect(turns(Array.from({ length: 100 }, (_, k) => k / 100))).toHaveLength(1)
})

// A quarter of 341 by 256 pixels is 21,824: 873 places of 5 by 5.
test('a strobe that is small counts where it is, not over a field', () => {
  expect(of(wave(8, 0.1, 0.6), 20, 20)).toMatchObject({ field: 0 })
  expect(of(wave(8, 0.1, 0.6), 20, 20).anywhere).toBeGreaterThan(3)
  expect(of(wave(8, 0.1, 0.6), 30, 30).field).toBeGreaterThan(3)
})
