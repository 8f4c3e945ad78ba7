import { expect, test } from 'vitest'
import { STEP_S } from './fluid/step'
import { Turns } from './turns'

/** A screen of so many frames a second, for some seconds: what was stepped and painted, and the longest run of frames without paint. */
function run(turns: Turns, perS: number, seconds: number, inStills = false) {
  const seen = { steps: 0, draws: 0, longest: 0 }
  let bare = 0
  for (let n = 0; n < seconds * perS; n++) {
    const { steps, draw } = turns.take(1 / perS, false, inStills)
    seen.steps += steps
    if (draw) seen.draws++
    bare = draw ? 0 : bare + 1
    seen.longest = Math.max(seen.longest, bare)
  }
  return seen
}

test.each([24, 30, 60, 90, 120, 144])('at %i frames a second the smoke keeps its rate and every step is painted', (perS) => {
  const { steps, draws, longest } = run(new Turns(), perS, 10)
  expect(Math.abs(steps * STEP_S - 10)).toBeLessThan(0.2)
  expect(draws).toBeGreaterThan(0.9 * Math.min(perS, 1 / STEP_S) * 10)
  expect(longest).toBeLessThanOrEqual(Math.ceil(perS * STEP_S) + 1)
})

// A frame that came late, then a picture made afresh: steps are due and paint waits, both at once.
test.each([60, 120])('at %i frames a second nothing stands for ever when steps and paint wait at once', (perS) => {
  const turns = new Turns()
  turns.take(0.02, false, false)
  turns.ask()
  turns.take(3 * STEP_S * 0.26, false, false)
  for (let n = 0; n < 10; n++) {
    turns.ask()
    turns.take(1 / perS, false, false)
  }
  expect(run(turns, perS, 1).draws).toBeGreaterThan(20)
})

test('a paused picture is painted in each frame and never stepped, whatever was due', () => {
  const turns = new Turns()
  turns.take(3 * STEP_S * 0.26, false, false)
  turns.ask()
  for (let n = 0; n < 10; n++) expect(turns.take(1 / 60, true, false)).toEqual({ steps: 0, draw: true })
})

test('a still makes up for its whole second', () => {
  const turns = new Turns()
  expect(turns.take(1, false, true)).toEqual({ steps: 30, draw: true })
})

test.each([60, 120])('at %i frames a second one that comes late is made up for by and by, and never all at once', (perS) => {
  const turns = new Turns()
  let late = 0
  for (let n = 0; n < 600; n++) {
    const seconds = n % 20 === 19 ? 0.05 : 1 / perS
    const { steps, draw } = turns.take(seconds, false, false)
    late += seconds - steps * STEP_S
    expect(steps + (draw ? 1 : 0)).toBeLessThanOrEqual(1)
  }
  expect(late).toBeLessThan(perS === 60 ? 600 / 20 * 0.05 : 0.2) // at 60 there is no frame to spare: what is late stays out
})

test('a screen that grows slow keeps the rate again a second later', () => {
  const turns = new Turns()
  run(turns, 60, 2)
  run(turns, 24, 1)
  const { steps, draws } = run(turns, 24, 5)
  expect(Math.abs(steps * STEP_S - 5)).toBeLessThan(0.2)
  expect(draws).toBeGreaterThan(0.9 * 24 * 5)
})
