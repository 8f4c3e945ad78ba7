import { expect, test } from 'vitest'
import { STEP_S } from './fluid/step'
import type { FrameLook } from './frame'
import { film, frameWith } from './scene-for-tests'

// WCAG 2.2, success criterion 2.3.1: no more than three flashes in any second; a
// flash is a pair of opposing changes of relative luminance by a tenth or more
// where the darker is below 0.8. Counted here in every block of the picture.
const BLOCK = 8

function flashes(frames: number[]): number {
  let worst = 0
  const turns: number[] = []
  let from = frames[0]!
  let way = 0
  frames.forEach((now, k) => {
    const change = now - from
    if (way * change > 0 || way === 0) {
      if (Math.abs(change) >= 0.1 && Math.min(now, from) < 0.8 && way === 0) {
        way = Math.sign(change)
        turns.push(k)
      }
      if (way !== 0 && way * (now - from) > 0) from = now
      return
    }
    if (Math.abs(change) < 0.1 || Math.min(now, from) >= 0.8) return
    way = Math.sign(change)
    from = now
    turns.push(k)
  })
  for (let k = 0; k < turns.length; k++) {
    const within = turns.filter((at) => at >= turns[k]! && at < turns[k]! + 1 / STEP_S).length
    worst = Math.max(worst, Math.floor(within / 2))
  }
  return worst
}

const linear = (byte: number) => (byte / 255 <= 0.04045 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4)

/** Luminance over time of every block of the picture, over a mid-grey wall. */
function luminance(frame: FrameLook, seconds: number): number[][] {
  const blocks: number[][] = []
  film(frame, seconds, (picture) => {
    const across = Math.floor(picture.columns / BLOCK)
    const down = Math.floor(picture.rows / BLOCK)
    for (let b = 0; b < across * down; b++) {
      let sum = 0
      for (let y = 0; y < BLOCK; y++) {
        for (let x = 0; x < BLOCK; x++) {
          const p = 4 * ((Math.floor(b / across) * BLOCK + y) * picture.columns + (b % across) * BLOCK + x)
          const [r, g, bl, a] = picture.front.subarray(p, p + 4) as unknown as [number, number, number, number]
          const over = (c: number) => linear((c * a + 128 * (255 - a)) / 255)
          sum += 0.2126 * over(r) + 0.7152 * over(g) + 0.0722 * over(bl)
        }
      }
      ;(blocks[b] ??= []).push(sum / (BLOCK * BLOCK))
    }
  })
  return blocks
}

test('flames never flash more than three times a second, anywhere', () => {
  const burning = frameWith({ flameKW: 40, outTempC: 800, outVelocityMS: 1.8, opticalDepth: 4, lightness: 0.2, churning: 1.4 })
  const worst = Math.max(...luminance(burning, 5).map(flashes))
  expect(worst).toBeLessThanOrEqual(3)
})

test('the flash counter sees a strobe', () => {
  expect(flashes(Array.from({ length: 60 }, (_, k) => (k % 6 < 3 ? 0.1 : 0.6)))).toBeGreaterThan(3)
  expect(flashes(Array.from({ length: 60 }, (_, k) => (k % 30 < 15 ? 0.1 : 0.6)))).toBeLessThanOrEqual(3)
})
