import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { encode } from 'fast-png'
import { expect, test } from 'vitest'
import { arrowSpeed } from '../lib/arrow.mjs'

const opening = { x0: 40, y0: 60, x1: 100, y1: 260 }
const [WALL, TRIM, RIM, INK] = [180, 219, 250, 25]

/** A wall with the edge of a door's frame right of the opening, and an arrow of so many points' length, or none. */
function speedShown(length) {
  const width = 200
  const height = 300
  const data = new Uint8Array(3 * width * height).fill(WALL)
  const fill = (x0, y0, x1, y1, grey) => {
    for (let y = y0; y < y1; y++) data.fill(grey, 3 * (y * width + x0), 3 * (y * width + x1))
  }
  fill(100, 50, 113, 260, TRIM)
  fill(113, 50, 115, 260, INK)
  if (length > 0) {
    fill(117 - 3, 200 - length - 3, 120 + 3, 203 + 3, RIM)
    fill(117, 200 - length, 120, 203, INK)
  }
  const folder = mkdtempSync(join(tmpdir(), 'lintel-arrow-'))
  const path = join(folder, 'wall.png')
  writeFileSync(path, encode({ width, height, data, channels: 3 }))
  const speed = arrowSpeed(path, opening, 0.01)
  rmSync(folder, { recursive: true })
  return speed
}

test('an arrow is read though the frame beside it is longer, and none is seen where there is none', () => {
  expect(speedShown(12)).toBeCloseTo((12 * 0.01) / 0.25, 6)
  expect(speedShown(90)).toBeCloseTo((90 * 0.01) / 0.25, 6)
  expect(speedShown(0)).toBeNaN()
})
