import { expect, test, vi } from 'vitest'
import { estimate } from '../estimator/index.mjs'
import { near, photograph } from './synthetic.mjs'

vi.setConfig({ testTimeout: 60_000 }) // each reads a few hundred frames

test.each([0.1, 0.3, 0.7, 1.5, 3])('optical depth %f hides 1 - exp(-depth)', (tau) => {
  near(estimate(photograph({ tau, uneven: 0.05 })).opacity, 1 - Math.exp(-tau), 0.02)
})

// L* of greys by hand from CIE 15: 18 % grey, sRGB 118, has L* 49.6 (any table of the colour space).
test.each([[0, 0], [118, 0.496], [255, 1]])('a grey of %i has the lightness %f', (grey, lightness) => {
  expect(Math.abs(estimate(photograph({ grey })).lightness - lightness)).toBeLessThan(0.01)
})

test('thin smoke is as light as it is, whatever shines through', () => {
  expect(Math.abs(estimate(photograph({ tau: 0.1, grey: 200 })).lightness - estimate(photograph({ tau: 3, grey: 200 })).lightness)).toBeLessThan(0.03)
})

test.each([0.25, 0.5, 0.75, 1])('smoke over %f of the opening', (share) => {
  near(estimate(photograph({ share })).area, share, 0.02)
})

test('one cue changed leaves the other three alone', () => {
  const { beyond: _, ...base } = estimate(photograph({ tau: 0.7 }))
  const changed = { opacity: { tau: 3 }, speed: { tau: 0.7, speed: 1.2 }, lightness: { tau: 0.7, grey: 210 }, area: { tau: 0.7, share: 0.9 } }
  for (const [cue, scene] of Object.entries(changed)) {
    const seen = estimate(photograph(scene))
    for (const other of Object.keys(base).filter((name) => name !== cue)) near(seen[other], base[other], 0.05)
    expect(Math.abs(seen[cue] / base[cue] - 1), cue).toBeGreaterThan(0.2)
  }
})

test('nothing in the opening has no opacity, no area and no speed', () => {
  expect(estimate(photograph({ tau: 0 }))).toEqual({ opacity: 0, speed: Number.NaN, lightness: Number.NaN, area: 0, beyond: Number.NaN })
})
