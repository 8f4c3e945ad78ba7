import { expect, test } from 'vitest'
import { box } from '../buildings/box'
import { DAY } from './draw/palette'
import { HeadStart } from './head-start'
import { layOut } from './layout'
import { frameWith, hash } from './scene-for-tests'
import { frameView } from './view'
import { Wisps } from './wisps'

const view = frameView(layOut(box), 'A', 0.85)

/** Runs a head start a little at a time, and says how often it had to. */
function run(ms: number, frame = frameWith({})): { ahead: HeadStart; times: number } {
  const ahead = new HeadStart(box, view)
  const wisps = new Wisps()
  let times = 1
  while (!ahead.run(frame, wisps, DAY.smoke, ms)) times++
  return { ahead, times }
}

test('a head start in the smallest pieces comes to the smoke of one at once, painted', () => {
  const once = run(Infinity)
  const pieces = run(1e-6)
  expect(once.times).toBe(1)
  expect(pieces.times).toBeGreaterThan(500)
  expect(hash(pieces.ahead.picture.front)).toBe(hash(once.ahead.picture.front))
  expect(pieces.ahead.picture.timeS).toBe(once.ahead.picture.timeS)
  expect(hash(run(Infinity, frameWith({ opticalDepth: 1 })).ahead.picture.front)).not.toBe(hash(once.ahead.picture.front))
})

test('it knows what a cell takes, in pieces or not', () => {
  for (const ms of [Infinity, 1e-6]) {
    const { msPerCell } = run(ms).ahead
    expect(msPerCell).toBeGreaterThan(0)
    expect(msPerCell).toBeLessThan(1)
  }
})
