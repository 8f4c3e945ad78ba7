import { vi } from 'vitest'
import { box } from '../buildings/box'
import type { Scenario } from '../wire.gen'
import { DAY } from './draw/palette'
import { STEP_S } from './fluid/step'
import { emptyFrame, type FrameLook, type OpeningLook } from './frame'
import { layOut } from './layout'
import { Picture } from './picture'
import { frameView } from './view'

vi.setConfig({ testTimeout: 60_000 }) // seconds of smoke are reckoned here, also on a machine that is busy

const plain: Partial<OpeningLook> = {
  open: 1, flow: 3, neutralPlane: 0.4, outVelocityMS: 0.8, inVelocityMS: 0.5, outTempC: 200, opticalDepth: 2,
  lightness: 0.5, churning: 0.7,
}

/** A grid that a test can afford. */
export const CELLS = 5000

/** A frame in which one opening shows something. */
export function frameWith(look: Partial<OpeningLook>, opening = 'port_lower_left', scenario: Scenario = box): FrameLook {
  const frame = emptyFrame(scenario.compartments.length, scenario.openings.length)
  Object.assign(frame.openings[scenario.openings.findIndex(({ id }) => id === opening)]!, plain, look)
  return frame
}

/** Runs the picture of the box on one frame that does not change. */
export function film(frame: FrameLook, seconds: number, each?: (picture: Picture) => void, cells = CELLS): Picture {
  const picture = new Picture(box, frameView(layOut(box), 'A', 0.85), cells)
  const steps = Math.ceil(seconds / STEP_S)
  for (let k = 0; k < steps; k++) {
    picture.follow(frame)
    picture.step()
    if (each || k === steps - 1) picture.paint(DAY.smoke)
    each?.(picture)
  }
  return picture
}

/** FNV-1a over the pixels (Fowler, Noll and Vo; constants from the IETF draft, from memory, to be confirmed). */
export function hash(pixels: Uint8ClampedArray): number {
  let h = 0x811c9dc5
  for (const byte of pixels) h = Math.imul(h ^ byte, 0x01000193)
  return h >>> 0
}
