import { expect, test } from 'vitest'
import { box } from '../buildings/box'
import type { Side } from '../wire.gen'
import { DAY } from './draw/palette'
import type { FrameLook } from './frame'
import { Halves } from './halves'
import { layOut } from './layout'
import { Picture } from './picture'
import { CELLS, frameWith, hash } from './scene-for-tests'
import { frameView } from './view'

const burning = frameWith({ flameKW: 60, outTempC: 700 })

/** The pixels of every step, one after another, as a number each, of smoke whose painting is begun as `begin` does. */
function pixels(frame: FrameLook, side: Side, begin: (picture: Picture, n: number) => void, every = 1): number[] {
  const picture = new Picture(box, frameView(layOut(box), side, 0.85), CELLS)
  const all: number[] = []
  for (let n = 0; n < 45; n++) {
    picture.follow(frame)
    picture.step()
    begin(picture, n)
    if (n % every !== every - 1) continue
    picture.paint(DAY.smoke)
    all.push(hash(side === 'A' ? picture.front : picture.back))
  }
  return all
}

const whole = () => {}
const inParts = (picture: Picture, n: number) => {
  picture.prepare(((7 * n) % 11) / 10)
  picture.prepare(((5 * n) % 7) / 6) // may be less than before
}

for (const [name, side] of [['before', 'A'], ['behind', 'C']] as const) {
  test(`smoke ${name} the building that is painted in parts has the pixels of that painted at once`, () => {
    const once = pixels(burning, side, whole)
    expect(pixels(burning, side, inParts)).toEqual(once)
    expect(new Set(once.slice(5)).size).toBe(40) // it moves: a part left behind would show
  })
}

test('smoke that moves on before its painting is done has the pixels of that painted at once', () => {
  const all = (picture: Picture) => picture.prepare()
  const once = pixels(burning, 'A', all, 3)
  expect(pixels(burning, 'A', (picture) => picture.prepare(0.5), 3)).toEqual(once)
  expect(pixels(burning, 'A', whole, 3)).not.toEqual(once) // begun, or not begun at all, are not the same
})

test('a picture goes on from one half painted as from one painted', () => {
  const from = (share: number) => {
    const old = new Picture(box, frameView(layOut(box), 'A', 0.85), CELLS)
    for (let n = 0; n < 30; n++) {
      old.follow(burning)
      old.step()
    }
    old.prepare(share)
    const picture = new Picture(box, old.view, 2 * CELLS)
    picture.takeOver(old)
    picture.paint(DAY.smoke)
    return hash(picture.front)
  }
  expect(from(0.5)).toBe(from(1))
})

/** Plays two seconds of frames by turns, of which stepping, painting the body and drawing take so many ms. */
function play(halves: Halves, step: number, body: number, draw: number): { stepMS: number; drawMS: number } {
  let stepMS = 0
  let drawMS = 0
  for (let n = 0; n < 60; n++) {
    stepMS = step + halves.share * body
    drawMS = draw + (1 - halves.share) * body
    halves.note({ steps: 1, draw: false }, stepMS)
    halves.note({ steps: 0, draw: true }, drawMS)
  }
  return { stepMS, drawMS }
}

test.each([[1, 2, 1], [2, 2, 1], [1, 2, 2.5]])('stepping %f ms, a body of %f and drawing %f share two frames evenly', (step, body, draw) => {
  const { stepMS, drawMS } = play(new Halves(), step, body, draw)
  expect(Math.abs(stepMS - drawMS)).toBeLessThan(0.1)
})

test('where the one takes longer than all the rest it has nothing of the body', () => {
  const halves = new Halves()
  play(halves, 5, 1, 1)
  expect(halves.share).toBe(0)
  play(halves, 1, 1, 5)
  expect(halves.share).toBe(1)
})

test('a slow screen, and a picture drawn without a step, say nothing of the two', () => {
  const halves = new Halves()
  for (let n = 0; n < 60; n++) halves.note({ steps: 1, draw: true }, n)
  for (let n = 0; n < 60; n++) halves.note({ steps: 0, draw: true }, n)
  expect(halves.share).toBe(0.5)
})
