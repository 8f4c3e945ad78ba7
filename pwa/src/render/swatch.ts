import { penOf, type Sheet } from './draw/pen'
import { paletteOf, type Palette } from './draw/palette'
import { STEP_S } from './fluid/step'
import { emptyFrame, type FrameLook } from './frame'
import { Picture } from './picture'
import { Film } from './film'
import type { Place } from './layout'
import { HEIGHT_M, scenario, swatchLook, view, WIDTH_M, type SwatchCue } from './swatch-look'
import { corners } from './view'

// The moving pictures of a rating rail, drawn by the same fluid and the same
// tones as a scene.

const CELLS = 1800
const HEAD_START = 36 // steps before the first that is shown in its own time: its smoke is on its way then
const MOST_STEPS = 6 // in one picture, so that no tap waits for a swatch; chosen by us
const MOST_MS = 2 // of script in one picture for what all smoke shares; chosen by us

/** What a swatch shows now. */
export interface SwatchShowing { cue: SwatchCue; level: number; theme: string | undefined }

interface Shown {
  key: string; picture: Picture; frame: FrameLook; film: Film
  boards: OffscreenCanvas; wall: OffscreenCanvas
  lastT: number
  /** Smoke time at t = 0, once its head start is over. */
  offsetS: number
  /** Steps of the head start that are left. */
  behind: number
}
const shown = new WeakMap<Sheet, Shown>()

/**
 * Draws the swatch of a level t seconds into its movement: first boards alone, for
 * an opening that no smoke has left yet would be the picture of the level "none",
 * and after a few pictures the opening with its smoke on its way. Time only ever
 * goes on: a clock that starts again from 0 carries the same smoke further.
 * Returns whether its head start is over.
 */
export function drawSwatch(canvas: Sheet, { cue, level, theme }: SwatchShowing, t: number): boolean {
  const ctx = penOf(canvas)
  const key = `${cue} ${level} ${theme} ${canvas.width}x${canvas.height}`
  const known = shown.get(canvas)
  const one = known?.key === key ? known : begin(key, { cue, level, theme }, canvas)
  shown.set(canvas, one)
  if (one === known) move(one, t)
  if (one.behind > 0) {
    ctx.drawImage(one.boards, 0, 0)
    return false
  }
  one.picture.paint(paletteOf(theme).smoke)
  ctx.drawImage(one.wall, 0, 0)
  one.film.show(ctx, one.picture.front, canvas.width, canvas.height)
  return true
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

function begin(key: string, { cue, level, theme }: SwatchShowing, canvas: Sheet): Shown {
  const { picture, frame } = swatchPicture(cue, level)
  const wall = (openings: Place[]) => drawWall(canvas, paletteOf(theme), openings)
  return {
    key, picture, frame, film: new Film(picture.columns, picture.rows), lastT: 0, offsetS: 0, behind: HEAD_START,
    boards: wall([]), wall: wall(view.layout.places),
  }
}

const BOARD_M = 0.14

/** A wall of boards, light and dark by turns, so that one sees how much the smoke hides; and openings in it. */
function drawWall({ width, height }: Sheet, palette: Palette, openings: Place[]): OffscreenCanvas {
  const wall = new OffscreenCanvas(width, height)
  const ctx = wall.getContext('2d')!
  ctx.setTransform(width / WIDTH_M, 0, 0, height / HEIGHT_M, 0, 0)
  for (let k = 0; k * BOARD_M < HEIGHT_M; k++) {
    ctx.fillStyle = k % 2 === 0 ? palette.box.front : palette.box.side
    ctx.fillRect(0, k * BOARD_M, WIDTH_M, BOARD_M)
  }
  for (const place of openings) {
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
