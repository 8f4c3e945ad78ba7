// Photographs whose answer is known by construction, made with nothing of the
// renderer: a rectangle of smoke of one colour whose optical depth is a sum of
// slow waves carried along at one velocity.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { encode } from 'fast-png'
import { expect } from 'vitest'
import { scratch } from './scratch.mjs'

const SIZE = { width: 120, height: 140 }
const OPENING = { x0: 30, y0: 40, x1: 90, y1: 120 }
const FRAMES = 40
const SECONDS = 1 / 30
const METRES = 0.01

const plain = { tau: 1.5, speed: 0.6, grey: 128, share: 0.6, uneven: 0.25 }

/** Waves of about half the opening's width, in directions all round; the numbers are arbitrary. */
const WAVES = Array.from({ length: 9 }, (_, k) => ({
  kx: Math.cos(2.4 * k) * (0.14 + 0.015 * k), ky: Math.sin(2.4 * k) * (0.14 + 0.015 * k), phase: 1.7 * k * k,
}))

const uneven = (x, y) => WAVES.reduce((sum, w) => sum + Math.sin(w.kx * x + w.ky * y + w.phase), 0) / 3

/** Writes both strips of a scene and returns the sighting. `dx` and `dy` say which way the smoke goes, `beyond` how fast above the opening. */
export function photograph(scene = {}) {
  const { tau, speed, grey, share, uneven: how, dx, dy, strobe, beyond } = { ...plain, dx: -0.6, dy: -0.8, strobe: 0, beyond: 0, ...scene }
  const plane = OPENING.y0 + share * (OPENING.y1 - OPENING.y0)
  const step = (speed * SECONDS) / METRES
  const beyondStep = (beyond * SECONDS) / METRES
  const strips = ['black', 'white'].map(() => new Uint8Array(SIZE.width * SIZE.height * FRAMES * 4).fill(255))
  for (let k = 0; k < FRAMES; k++) {
    for (let y = 0; y < SIZE.height; y++) {
      for (let x = 0; x < SIZE.width; x++) {
        const past = beyond > 0 && y < OPENING.y0
        const within = past || (x >= OPENING.x0 && x < OPENING.x1 && y >= OPENING.y0 && y < plane)
        const gone = k * (past ? beyondStep : step)
        const depth = tau * Math.max(0, 1 + how * uneven(x - dx * gone, y - dy * gone))
        const hidden = within ? 1 - Math.exp(-depth) : 0
        const lit = grey * (1 + strobe * Math.sin(k))
        const at = 4 * ((k * SIZE.height + y) * SIZE.width + x)
        for (let c = 0; c < 3; c++) {
          strips[0][at + c] = Math.round(hidden * lit)
          strips[1][at + c] = Math.round(hidden * lit + (1 - hidden) * 255)
        }
      }
    }
  }
  const folder = scratch()
  const [black, white] = ['black', 'white'].map((name, n) => {
    const path = join(folder, `${name}.png`)
    writeFileSync(path, encode({ width: SIZE.width, height: SIZE.height * FRAMES, data: strips[n], channels: 4, depth: 8 }))
    return path
  })
  return { black, white, frames: FRAMES, secondsBetween: SECONDS, metresPerPixel: METRES, opening: OPENING }
}

/** Wants a value within a share of what it should be. */
export const near = (value, want, share) => expect(Math.abs(value / want - 1), `${value} for ${want}`).toBeLessThan(share)
