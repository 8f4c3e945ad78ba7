import { expect, test } from 'vitest'
import { BUDGET_MS, KeepUp } from './keep-up'
import { FINENESS } from './picture'

/** A device on which a picture takes so many ms a thousand cells, for some seconds at 60 pictures a second. */
function run(keep: KeepUp, msEach: number, seconds: number): number {
  for (let t = 0; t < seconds; t += 1 / 60) keep.note((msEach * FINENESS[keep.fineness]!) / 1000, 1 / 60)
  return (msEach * FINENESS[keep.fineness]!) / 1000
}

test('a device that keeps up draws as finely as it may', () => {
  const keep = new KeepUp()
  run(keep, 0.05, 60)
  expect(keep.fineness).toBe(0)
})

test.each([0.15, 0.25, 0.4, 0.8])('at %f ms a thousand cells, a second later a picture fits its budget or is as coarse as can be', (msEach) => {
  const keep = new KeepUp()
  const took = run(keep, msEach, 1)
  expect(took <= BUDGET_MS || keep.fineness === FINENESS.length - 1, `${took} ms at ${FINENESS[keep.fineness]}`).toBe(true)
  expect(keep.fineness).toBeGreaterThan(0)
})

test('one slow picture, as of a garbage collection, makes nothing coarser', () => {
  const keep = new KeepUp()
  run(keep, 0.05, 2)
  keep.note(60, 0.07)
  run(keep, 0.05, 2)
  expect(keep.fineness).toBe(0)
})
