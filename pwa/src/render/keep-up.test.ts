import { expect, test } from 'vitest'
import { BUDGET_MS, KeepUp } from './keep-up'
import { FINENESS } from './picture'

/** A device on which a picture takes so many ms a thousand cells, for some seconds at so many pictures a second. */
function run(keep: KeepUp, msEach: number, seconds: number, perS = 60): number {
  for (let t = 0; t < seconds; t += 1 / perS) keep.note((msEach * FINENESS[keep.fineness]!) / 1000, 1 / perS)
  return (msEach * FINENESS[keep.fineness]!) / 1000
}

test('a device that keeps up draws as finely as it may', () => {
  const keep = new KeepUp()
  keep.expect(0.05 / 1000)
  run(keep, 0.05, 60)
  expect(keep.fineness).toBe(0)
})

test.each([0.15, 0.25, 0.4, 0.8, 8])('at %f ms a thousand cells, a second later a picture fits its budget or is as coarse as can be', (msEach) => {
  const keep = new KeepUp()
  const took = run(keep, msEach, 1, Math.min(60, 1000 / (24 * msEach)))
  expect(took <= BUDGET_MS || keep.fineness === FINENESS.length - 1, `${took} ms at ${FINENESS[keep.fineness]}`).toBe(true)
  expect(keep.fineness).toBeGreaterThan(0)
})

test.each([0.15, 0.25, 0.4])('at %f ms a thousand cells, known beforehand, it fits from the first picture on and stays', (msEach) => {
  const keep = new KeepUp()
  keep.expect(msEach / 1000)
  const at = keep.fineness
  expect((msEach * FINENESS[at]!) / 1000).toBeLessThan(BUDGET_MS)
  run(keep, msEach, 60)
  expect(keep.fineness).toBe(at)
})

test('steps and paint by turns count as both halves of one picture', () => {
  const keep = new KeepUp()
  for (let k = 0; k < 600; k++) keep.note(k % 2 === 0 ? 3.5 : 0.5, 1 / 60)
  expect(keep.fineness).toBe(0)
  for (let k = 0; k < 60; k++) keep.note(k % 2 === 0 ? 6 : 0.5, 1 / 60)
  expect(keep.fineness).toBeGreaterThan(0)
})

test.each([[60, 0.07], [300, 0.3], [2000, 1.2]])('one picture of %i ms, as of a page held up, makes nothing coarser', (ms, seconds) => {
  const keep = new KeepUp()
  run(keep, 0.05, 2)
  keep.note(ms, seconds)
  run(keep, 0.05, 2)
  expect(keep.fineness).toBe(0)
})
