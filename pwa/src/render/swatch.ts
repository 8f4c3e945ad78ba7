import type { Scenario } from '../wire.gen'
import { drawOpening } from './draw/openings'
import { paletteOf, type Palette } from './draw/palette'
import type { Pen } from './draw/pen'
import { STEP_S } from './fluid/step'
import { emptyFrame, type FrameLook, type OpeningLook } from './frame'
import { layOut } from './layout'
import { Picture } from './picture'
import { Film } from './film'
import type { View } from './view'

// A rating rail's moving pictures: one opening in a boarded wall, with smoke of
// one level of one cue, drawn by the same fluid and the same tones as a scene.

export type SwatchCue = 'volume' | 'velocity' | 'density' | 'darkness'

const WIDTH_M = 1.5
const HEIGHT_M = 1.125
const OPENING = { width: 0.72, height: 0.46, sill: 0.1 }

/** The middle of each level, between the cuts of content/scales; a test holds them there. */
export const LEVELS = {
  /** Share of the opening that the outflow fills; the flux behind the scale grows with it. */
  filled: [0, 0.16, 0.45, 0.8, 1],
  /** Mean outflow speed over the square root of g times the opening's height. */
  froude: [0.012, 0.09, 0.235, 0.42, 0.64],
  /** How hot gas must be to move like that, C: as the scale's own derivation has it. */
  tempC: [24, 34, 90, 250, 450],
  opticalDepth: [0, 0.3, 1.6, 5, 14],
  lightness: [0.45, 0.86, 0.585, 0.38, 0.12],
} as const

/** What an opening shows at one level of one cue, every other cue being held in the middle. */
export function swatchLook(cue: SwatchCue, level: number, look: OpeningLook): OpeningLook {
  const at = (list: readonly number[], of: SwatchCue, middle: number) => list[of === cue ? level : middle]!
  const froude = at(LEVELS.froude, 'velocity', 2)
  const filled = cue === 'volume' ? LEVELS.filled[level]! : 0.62
  look.open = 1
  look.outVelocityMS = froude * Math.sqrt(9.81 * OPENING.height)
  look.outTempC = at(LEVELS.tempC, 'velocity', 2)
  look.opticalDepth = at(LEVELS.opticalDepth, 'density', cue === 'darkness' ? 3 : 2) * (cue === 'volume' ? 2 : 1)
  look.lightness = at(LEVELS.lightness, 'darkness', 3)
  look.neutralPlane = 1 - filled
  look.churning = 2.2 * froude // of the band's top over the opening's mean: 1.5 / sqrt(0.47)
  look.flow = 3
  if (level === 0 && cue !== 'velocity') look.opticalDepth = 0
  return look
}

const scenario: Scenario = {
  v: 1, ambient: { t_c: 20 }, fuels: [], end_s: 1,
  compartments: [{ id: 'room', width_m: WIDTH_M, depth_m: 1, height_m: HEIGHT_M, floor_m: 0, lining: 'plywood' }],
  openings: [{
    id: 'opening', from: 'room', to: 'outside', side: 'A', kind: 'leak', sill_m: OPENING.sill,
    width_m: OPENING.width, height_m: OPENING.height, open: 1,
  }],
}
const view: View = {
  side: 'A', widthM: WIDTH_M, heightM: HEIGHT_M, groundM: HEIGHT_M, leftM: 0, layout: layOut(scenario),
}
const CELLS = 2200
const WARM_UP_S = 2.5 // so that the first picture already shows smoke on its way

interface Shown { key: string; picture: Picture; frame: FrameLook; film: Film; wall: OffscreenCanvas }
const shown = new WeakMap<HTMLCanvasElement, Shown>()

/** Draws the swatch of a level as it is t seconds into its movement. */
export function drawSwatch(canvas: HTMLCanvasElement, cue: SwatchCue, level: number, t: number): void {
  const ctx = canvas.getContext('2d')
  if (!ctx) return
  const theme = document.documentElement.dataset['theme'] ?? 'light'
  const key = `${cue} ${level} ${theme} ${canvas.width}x${canvas.height}`
  let one = shown.get(canvas)
  const until = t + WARM_UP_S
  if (!one || one.key !== key || one.picture.timeS > until + STEP_S) {
    one = begin(key, cue, level, canvas, paletteOf(theme))
    shown.set(canvas, one)
  }
  const due = Math.min(150, Math.floor((until - one.picture.timeS) / STEP_S))
  for (let k = 0; k < due; k++) {
    one.picture.follow(one.frame)
    one.picture.step()
  }
  one.picture.paint(paletteOf(theme).smoke)
  ctx.drawImage(one.wall, 0, 0)
  one.film.show(ctx, one.picture.front, canvas.width, canvas.height)
}

function begin(key: string, cue: SwatchCue, level: number, canvas: HTMLCanvasElement, palette: Palette): Shown {
  const picture = new Picture(scenario, view, CELLS)
  const frame = emptyFrame(1, 1)
  swatchLook(cue, level, frame.openings[0]!)
  return {
    key, picture, frame, film: new Film(picture.columns, picture.rows),
    wall: drawWall(canvas.width, canvas.height, palette, frame),
  }
}

function drawWall(width: number, height: number, palette: Palette, frame: FrameLook): OffscreenCanvas {
  const wall = new OffscreenCanvas(width, height)
  const ctx = wall.getContext('2d')!
  ctx.setTransform(width / WIDTH_M, 0, 0, height / HEIGHT_M, 0, 0)
  const pen: Pen = { ctx, pixel: WIDTH_M / 96 }
  ctx.fillStyle = palette.house.front
  ctx.fillRect(0, 0, WIDTH_M, HEIGHT_M)
  ctx.fillStyle = palette.line
  ctx.globalAlpha = 0.35
  for (let y = 0.06; y < HEIGHT_M; y += 0.14) ctx.fillRect(0, y, WIDTH_M, pen.pixel)
  ctx.globalAlpha = 1
  for (const place of view.layout.places) drawOpening(pen, view, palette, place, 'eye', frame)
  return wall
}
