import book from '../generated/scales.json'
import type { Scenario } from '../wire.gen'
import { scene as words } from '../words/scene'
import { paletteOf, type Palette } from './draw/palette'
import { STEP_S } from './fluid/step'
import { smokeTwin } from './describe'
import { emptyFrame, stillOpening, type FrameLook, type OpeningLook } from './frame'
import { layOut } from './layout'
import { Picture } from './picture'
import { Film } from './film'
import { corners, type View } from './view'

// A rating rail's moving pictures: one opening in a boarded wall, with smoke of
// one level of one cue, drawn by the same fluid and the same tones as a scene.

export type SwatchCue = 'volume' | 'velocity' | 'density' | 'darkness'

const WIDTH_M = 1.5
const HEIGHT_M = 1.125
const OPENING = { width: 0.72, height: 0.46, sill: 0.1 }

/** Cuts of a cue in content/scales; level k lies between cut k-1 and cut k of the list filled up to five levels. */
function cutsOf(cue: SwatchCue): number[] {
  const found = book.scales.find((one) => one.cue === cue)!
  return [...Array.from({ length: found.base }, () => 0), ...found.cuts.map((cut) => cut.at)]
}

/** A value in the middle of a level: midway in ratio, since people judge by ratio; past the last cut half as much again. */
export function middleOf(cue: SwatchCue, level: number): number {
  const cuts = cutsOf(cue)
  const low = cuts[level - 1] ?? 0
  const high = cuts[level] ?? 2.25 * low
  return low > 0 ? Math.sqrt(low * high) : 0.45 * high
}

/** Share of the opening that the outflow fills at each level of volume, and elsewhere. Chosen by us. */
const FILLED = [0, 0.18, 0.45, 0.8, 1] as const
const FILLED_ELSE = 0.62
/** How hot gas must be to move like each level of velocity, C: as that scale derives its cuts. */
const TEMP_C = [24, 34, 80, 220, 450] as const

/** What an opening shows at one level of one cue; every other cue is held in the middle. */
export function swatchLook(cue: SwatchCue, level: number, look: OpeningLook): OpeningLook {
  const speed = cue === 'velocity' || cue === 'volume' ? level : 2
  const froude = middleOf('velocity', speed)
  const filled = cue === 'volume' ? FILLED[level]! : FILLED_ELSE
  look.open = 1
  look.flow = 3
  look.neutralPlane = 1 - filled
  look.outVelocityMS = froude * Math.sqrt(9.81 * OPENING.height)
  look.outTempC = TEMP_C[speed]!
  look.lightness = 1 - (cue === 'darkness' && level > 0 ? Math.min(0.9, middleOf('darkness', level)) : 0.55)
  look.churning = filled > 0 ? (1.5 * froude) / Math.sqrt(filled) : 0 // the top of the band is half as fast again as its mean
  look.opticalDepth = depthOf(cue, level, froude, filled)
  return look
}

function depthOf(cue: SwatchCue, level: number, froude: number, filled: number): number {
  if (level === 0 && cue !== 'velocity') return 0
  if (cue === 'density') return middleOf('density', level)
  if (cue === 'darkness') return middleOf('density', 3)
  if (cue === 'velocity') return 2
  // Volume is K V over sqrt(g) A^(3/4); with tau = K sqrt(filled A) and V = v filled A that is the line below.
  return middleOf('volume', level) / (froude * Math.sqrt(filled) * Math.pow(OPENING.height / OPENING.width, 0.25))
}

const scenario: Scenario = {
  v: 1, ambient: { t_c: 20 }, fuels: [], end_s: 1,
  compartments: [{ id: 'room', width_m: WIDTH_M, depth_m: 1, height_m: HEIGHT_M, floor_m: 0, lining: 'plywood' }],
  openings: [{
    id: 'opening', from: 'room', to: 'outside', side: 'A', kind: 'port', sill_m: OPENING.sill,
    width_m: OPENING.width, height_m: OPENING.height, open: 1,
  }],
}
const view: View = {
  side: 'A', widthM: WIDTH_M, heightM: HEIGHT_M, groundM: HEIGHT_M, leftM: 0, layout: layOut(scenario), away: 1,
}

/** What the swatch of a level shows, in the words of a scene: never the level. */
export const swatchWords = (cue: SwatchCue, level: number): string =>
  [words.swatch, ...smokeTwin(view.layout.places[0]!, swatchLook(cue, level, stillOpening()))].join(' ')

const CELLS = 1800
const HEAD_START = 36 // steps before the first that is shown in its own time: its smoke is on its way then
const MOST_STEPS = 6 // in one picture, so that no tap waits for a swatch; chosen by us
const MOST_MS = 2 // of script in one picture for what all smoke shares; chosen by us

interface Shown {
  key: string; picture: Picture; frame: FrameLook; film: Film; wall: OffscreenCanvas
  lastT: number
  /** Smoke time at t = 0, once its head start is over. */
  offsetS: number
  /** Steps of the head start that are left. */
  behind: number
}
const shown = new WeakMap<HTMLCanvasElement, Shown>()

/**
 * Draws the swatch of a level t seconds into its movement: first the bare wall,
 * then in a few pictures what smoke leaves it before its time begins. Time only
 * ever goes on: a clock that starts again from 0 carries the same smoke further.
 * Returns whether its head start is over.
 */
export function drawSwatch(canvas: HTMLCanvasElement, cue: SwatchCue, level: number, t: number): boolean {
  const ctx = canvas.getContext('2d')
  if (!ctx) return true
  const theme = document.documentElement.dataset['theme'] ?? 'light'
  const key = `${cue} ${level} ${theme} ${canvas.width}x${canvas.height}`
  const known = shown.get(canvas)
  const one = known?.key === key ? known : begin(key, cue, level, canvas)
  shown.set(canvas, one)
  if (one === known) move(one, t)
  one.picture.paint(paletteOf(theme).smoke)
  ctx.drawImage(one.wall, 0, 0)
  one.film.show(ctx, one.picture.front, canvas.width, canvas.height)
  return one.behind === 0
}

/** Steps the smoke on to where it is at t, or some way through its head start. */
function move(one: Shown, t: number): void {
  if (one.behind > 0) {
    if (!one.picture.makeReady(MOST_MS)) return
    step(one, Math.min(MOST_STEPS, one.behind))
    one.behind = Math.max(0, one.behind - MOST_STEPS)
    one.lastT = t
    one.offsetS = one.picture.timeS - t
    return
  }
  if (t < one.lastT) one.offsetS += one.lastT - t
  one.lastT = t
  const due = Math.floor((t + one.offsetS - one.picture.timeS) / STEP_S + 1e-6)
  if (due > MOST_STEPS) one.offsetS -= (due - MOST_STEPS) * STEP_S // it was not looked at: nothing to make up for
  step(one, Math.min(MOST_STEPS, due))
}

function step({ picture, frame }: Shown, steps: number): void {
  for (let k = 0; k < steps; k++) {
    picture.follow(frame)
    picture.step()
  }
}

/** The smoke of a swatch before its first step, and the frame that it follows. */
export function swatchPicture(cue: SwatchCue, level: number): { picture: Picture; frame: FrameLook } {
  const frame = emptyFrame(1, 1)
  swatchLook(cue, level, frame.openings[0]!)
  return { picture: new Picture(scenario, view, CELLS), frame }
}

function begin(key: string, cue: SwatchCue, level: number, canvas: HTMLCanvasElement): Shown {
  const { picture, frame } = swatchPicture(cue, level)
  return {
    key, picture, frame, film: new Film(picture.columns, picture.rows), lastT: 0, offsetS: 0, behind: HEAD_START,
    wall: drawWall(canvas.width, canvas.height, paletteOf(document.documentElement.dataset['theme'])),
  }
}

const BOARD_M = 0.14

/** A wall of boards, light and dark by turns, so that one sees how much the smoke hides; and the opening in it. */
function drawWall(width: number, height: number, palette: Palette): OffscreenCanvas {
  const wall = new OffscreenCanvas(width, height)
  const ctx = wall.getContext('2d')!
  ctx.setTransform(width / WIDTH_M, 0, 0, height / HEIGHT_M, 0, 0)
  for (let k = 0; k * BOARD_M < HEIGHT_M; k++) {
    ctx.fillStyle = k % 2 === 0 ? palette.box.front : palette.box.side
    ctx.fillRect(0, k * BOARD_M, WIDTH_M, BOARD_M)
  }
  for (const place of view.layout.places) {
    const [tl, , br] = corners(view, place)
    const deep = ctx.createLinearGradient(0, tl.y, 0, br.y)
    deep.addColorStop(0.3, palette.insideDeep)
    deep.addColorStop(1, palette.inside)
    ctx.fillStyle = deep
    ctx.fillRect(tl.x, tl.y, br.x - tl.x, br.y - tl.y)
    ctx.strokeStyle = palette.line
    ctx.lineWidth = 0.025
    ctx.strokeRect(tl.x, tl.y, br.x - tl.x, br.y - tl.y)
  }
  return wall
}
