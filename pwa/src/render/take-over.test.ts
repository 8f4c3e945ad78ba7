import { expect, test } from 'vitest'
import { box } from '../buildings/box'
import { DAY } from './draw/palette'
import type { FrameLook } from './frame'
import { layOut } from './layout'
import { FINENESS, Picture } from './picture'
import { frameWith } from './scene-for-tests'
import { frameView } from './view'

const view = frameView(layOut(box), 'A', 0.85)

function run(cells: number, frame: FrameLook, steps: number, from?: Picture): Picture {
  const picture = new Picture(box, view, cells)
  if (from) picture.takeOver(from)
  for (let k = 0; k < steps; k++) {
    picture.follow(frame)
    picture.step()
  }
  picture.paint(DAY.smoke)
  return picture
}

/** Mean of a channel of the front over an eighth by an eighth of the picture's metres: 3 is what is hidden, 0 to 2 are colours. */
function blocks({ columns, rows, front, grid }: Picture, channel: number): number[] {
  const sums = Array.from({ length: 64 }, () => 0)
  const counts = Array.from({ length: 64 }, () => 0)
  const at = (cell: number, whole: number) => Math.min(7, Math.floor((4 * (cell + 0.5) * grid.cellM) / whole))
  for (let y = 0; y < rows; y++) {
    for (let x = 0; x < columns; x++) {
      const block = 8 * at(y, view.heightM) + at(x, view.widthM)
      sums[block]! += front[4 * (y * columns + x) + channel]!
      counts[block]!++
    }
  }
  return sums.map((sum, k) => sum / counts[k]!)
}

const apart = (a: number[], b: number[]) => a.reduce((sum, value, k) => sum + Math.abs(value - b[k]!), 0) / a.length

for (const [name, from, to] of [['coarser', FINENESS[1], FINENESS[3]], ['finer', FINENESS[4], FINENESS[1]]] as const) {
  test(`smoke taken over onto ${name} cells stands where it stood`, () => {
    const old = run(from, frameWith({}), 60)
    const taken = run(to, frameWith({}), 0, old)
    expect(apart(blocks(taken, 3), blocks(old, 3))).toBeLessThan(2) // of 255
    expect(apart(blocks(taken, 3), blocks(run(to, frameWith({}), 0), 3))).toBeGreaterThan(10) // a blank one would not
    expect(taken.timeS).toBe(old.timeS)
  })
}

test('a flame taken over burns on, and does not go out for the time of its afterglow', () => {
  const frame = frameWith({ flameKW: 60, outTempC: 700 })
  const old = run(FINENESS[1], frame, 60)
  const red = blocks(old, 0)
  expect(apart(blocks(run(FINENESS[2], frame, 0, old), 0), red)).toBeLessThan(2)
})

test('smoke goes on from there as it would have gone', () => {
  const frame = frameWith({ churning: 0 })
  const old = run(FINENESS[4], frame, 90)
  const went = run(FINENESS[1], frame, 45, old)
  const would = run(FINENESS[1], frame, 135)
  expect(apart(blocks(went, 3), blocks(would, 3))).toBeLessThan(0.5 * apart(blocks(old, 3), blocks(would, 3)))
})
