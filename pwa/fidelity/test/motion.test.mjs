import { expect, test, vi } from 'vitest'
import { estimate } from '../estimator/index.mjs'
import { near, photograph } from './synthetic.mjs'

vi.setConfig({ testTimeout: 60_000 }) // each reads a few hundred frames; apart from the other cues, so that two cores share them

test.each([0.05, 0.15, 0.5, 1.5, 3])('texture moving at %f m/s', (speed) => {
  near(estimate(photograph({ speed })).speed, speed, 0.05)
})

test.each([[1, 0], [0, -1], [-0.6, 0.8]])('whichever way it goes: %f, %f', (dx, dy) => {
  near(estimate(photograph({ dx, dy })).speed, 0.6, 0.05)
})

test('smoke without texture shows no speed, and none is made up', () => {
  expect(estimate(photograph({ uneven: 0 })).speed).toBeNaN()
})

test('smoke that only brightens and darkens does not move', () => {
  expect(estimate(photograph({ uneven: 0, strobe: 0.2 })).speed).toBeNaN()
})

test('what moves past the opening is measured apart from what moves in it', () => {
  expect(estimate(photograph({})).beyond).toBeNaN()
  near(estimate(photograph({ beyond: 0.3 })).beyond, 0.3, 0.08)
  near(estimate(photograph({ beyond: 0.3 })).speed, 0.6, 0.05)
})

test('smoke that stands still does not move', () => {
  expect(estimate(photograph({ speed: 0 })).speed).toBeNaN()
})
