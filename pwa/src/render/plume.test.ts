import { expect, test } from 'vitest'
import { box } from '../buildings/box'
import type { Scenario } from '../wire.gen'
import { DAY } from './draw/palette'
import { STEP_S } from './fluid/step'
import type { FrameLook, OpeningLook } from './frame'
import { layOut } from './layout'
import { Picture } from './picture'
import { frameWith } from './scene-for-tests'
import { frameView, openArea } from './view'

// A hall with a low, wide window under its roof, and a gate in its far wall.
const hall: Scenario = {
  ...box, ambient: { ...box.ambient, wind_m_s: 0 },
  compartments: [{ ...box.compartments[0]!, id: 'hall', floor_m: 0, width_m: 20, depth_m: 12, height_m: 5, x_m: 0, y_m: 0 }],
  openings: [
    { ...box.openings[0]!, id: 'window', kind: 'window', from: 'hall', to: 'outside', side: 'A', at_m: 8, width_m: 4, height_m: 1, sill_m: 3.5 },
    { ...box.openings[0]!, id: 'gate', kind: 'door', from: 'hall', to: 'outside', side: 'C', at_m: 8, width_m: 3, height_m: 3, sill_m: 0 },
  ],
}

const driven = { opticalDepth: 7, outVelocityMS: 5.3, outTempC: 430, flow: 2, neutralPlane: 0, churning: 1.9, lightness: 0.5 }

function filmed(scenario: Scenario, frame: FrameLook, seconds: number): Picture {
  const picture = new Picture(scenario, frameView(layOut(scenario), 'A', 0.85), 7500)
  for (let k = 0; k * STEP_S < seconds; k++) {
    picture.follow(frame)
    picture.step()
  }
  picture.paint(DAY.smoke)
  return picture
}

/** How much is hidden of a part of the picture, 0 to 1. */
function hidden({ front, columns, grid }: Picture, { x0, x1, y0, y1 }: { x0: number; x1: number; y0: number; y1: number }): number {
  const at = (metres: number) => Math.floor(metres / (grid.cellM / 2))
  let sum = 0
  for (let y = at(y0); y < at(y1); y++) for (let x = at(x0); x < at(x1); x++) sum += front[4 * (y * columns + x) + 3]! / 255
  return sum / ((at(y1) - at(y0)) * (at(x1) - at(x0)))
}

/** The window on the picture. */
const windowOf = ({ view }: Picture) => openArea(view, view.layout.places[0]!, 1)

test('smoke driven out of a low, wide window rises as one column: none hangs below the sill, and the sky beside it stays clear', () => {
  const frame = frameWith(driven, 'window', hall)
  Object.assign(frame.openings[1]!, { ...frame.openings[0]!, outVelocityMS: 2.5 })
  const picture = filmed(hall, frame, 8)
  const area = windowOf(picture)
  const { heightM, widthM, groundM } = picture.view
  expect(hidden(picture, { ...area, y0: 0.4 * heightM, y1: area.y0 })).toBeGreaterThan(0.8)
  expect(hidden(picture, { ...area, y0: area.y1 + 0.5, y1: groundM })).toBeLessThan(0.02)
  expect(hidden(picture, { x0: 0, x1: 0.12 * widthM, y0: 0, y1: area.y0 })).toBeLessThan(0.1)
})

/** The same hall, its gate below the window. */
const gateBelow: Scenario = { ...hall, openings: [hall.openings[0]!, { ...hall.openings[1]!, side: 'A', at_m: 8.5 }] }

/** Share hidden by what has risen from the gate past the window, whatever leaves by this. */
function aboveWindow(window: Partial<OpeningLook>): number {
  const frame = frameWith({ opticalDepth: 8, outVelocityMS: 1.5, outTempC: 300, flow: 2, neutralPlane: 0 }, 'gate', gateBelow)
  Object.assign(frame.openings[0]!, { ...frame.openings[1]!, ...window })
  const picture = filmed(gateBelow, frame, 6)
  const area = windowOf(picture)
  return hidden(picture, { ...area, y0: area.y0 - 3, y1: area.y0 - 0.5 })
}

test('dense smoke that passes before an opening goes on above it, however thin what leaves there is', () => {
  const alone = aboveWindow({ opticalDepth: 0, outVelocityMS: 0 })
  expect(alone).toBeGreaterThan(0.5)
  expect(aboveWindow({ opticalDepth: 0.2 })).toBeGreaterThan(0.8 * alone)
})
