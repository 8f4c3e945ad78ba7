import { STEP_S } from '../../src/render/fluid/step'
import type { Daylight } from '../../src/render/draw/palette'
import type { FrameLook } from '../../src/render/frame'
import type { Rect } from '../../src/render/jet'
import { layOut } from '../../src/render/layout'
import { Show, type Showing } from '../../src/render/show'
import { frameView, openArea } from '../../src/render/view'
import type { Scenario, Side } from '../../src/wire.gen'
import { pngOf } from './photograph'

/** A whole scene on its real wall, as the app shows it. */
export interface WallTake {
  scenario: Scenario
  side: Side
  frame: FrameLook
  opening: string
  near: boolean
  cutaway?: boolean
  theme?: 'light' | 'dark' | 'outdoor'
  /** Left out, the light that the theme goes with. */
  light?: Daylight
  /** Size in points. */
  width: number
  height: number
  /** Seconds of smoke before the first picture. */
  warmS: number
  /** How many pictures, and the seconds between them. */
  pictures: number
  betweenS: number
  /** As someone sees it who asked for reduced motion. */
  inStills?: boolean
}

interface Stage { canvas: HTMLCanvasElement; show: Show; showing: Showing }

/** A scene on the page, ready to be stepped. */
function stage({ scenario, side, frame, near, opening, cutaway = false, theme = 'light', light, width, height }: WallTake): Stage {
  performance.now = () => 0 // no frame is ever late: the machine's speed is not to be seen in a photograph
  document.documentElement.dataset['theme'] = theme
  const canvas = document.createElement('canvas')
  canvas.style.cssText = `display:block;width:${width}px;height:${height}px`
  document.body.replaceChildren(canvas)
  return {
    canvas, show: new Show(canvas),
    showing: {
      scenario, side, frame, near, cutaway, us: false, selected: near ? opening : undefined, paused: false,
      theme, light, size: { width, height, density: devicePixelRatio },
    },
  }
}

/** Draws a scene at fixed steps, whatever the machine's speed, and returns its pictures as PNG in base64. */
export async function drawWall(take: WallTake): Promise<string[]> {
  const { canvas, show, showing } = stage(take)
  const inStills = take.inStills ?? false
  const run = (seconds: number) => {
    const step = inStills ? 1 : STEP_S
    for (let at = 0; at < seconds - 1e-9; at += step) show.advance(showing, step, inStills)
  }
  run(take.warmS)
  const pictures: string[] = []
  for (let k = 0; k < take.pictures; k++) {
    if (k > 0) run(take.betweenS)
    pictures.push(await pngOf(canvas))
  }
  return pictures
}

/** A running fire, filmed small: every step of the picture below the last, each place `side` points wide. */
export interface FilmTake extends WallTake {
  /** The fire's frames, each shown for `frameS`; the first during the warm-up too. */
  frames: FrameLook[]
  frameS: number
  side_pt: number
  /** Planted: a pale veil that comes and goes this often a second over the given share of the picture's width. */
  strobe?: { hertz: number; share: number }
}

export async function filmWall(take: FilmTake): Promise<{ png: string; width: number; height: number; perSecond: number }> {
  const { canvas, show, showing } = stage(take)
  for (let at = 0; at < take.warmS; at += STEP_S) show.advance(showing, STEP_S, false)
  const width = Math.floor(take.width / take.side_pt)
  const height = Math.floor(take.height / take.side_pt)
  const perFrame = Math.round(take.frameS / STEP_S)
  const strip = new OffscreenCanvas(width, height * take.frames.length * perFrame)
  const ctx = strip.getContext('2d', { willReadFrequently: true })!
  ctx.imageSmoothingQuality = 'high'
  take.frames.forEach((frame, k) => {
    for (let n = 0; n < perFrame; n++) {
      show.advance({ ...showing, frame }, STEP_S, false)
      const top = (k * perFrame + n) * height
      ctx.drawImage(canvas, 0, top, width, height)
      veil(ctx, take, (k * perFrame + n) * STEP_S, { top, width, height })
    }
  })
  return { png: await pngOf(strip), width, height, perSecond: 1 / STEP_S }
}

function veil(ctx: OffscreenCanvasRenderingContext2D, { strobe }: FilmTake, time: number, at: { top: number; width: number; height: number }): void {
  if (!strobe || Math.sin(2 * Math.PI * strobe.hertz * time) <= 0) return
  ctx.fillStyle = 'rgba(255,255,255,0.6)'
  ctx.fillRect(0, at.top, strobe.share * at.width, at.height)
}

/** Where an opening is on a picture that drawWall makes, in its pixels, and its scale. */
export function whereOnWall({ scenario, side, opening, width, height }: WallTake): { opening: Rect; metresPerPixel: number } {
  const view = frameView(layOut(scenario), side, width / height)
  const place = view.layout.places.find(({ id }) => id === opening)
  if (!place) throw new Error(`opening ${opening} is not in the scenario`)
  const perMetre = (width * devicePixelRatio) / view.widthM
  const { x0, y0, x1, y1 } = openArea(view, place, 1)
  return { opening: { x0: x0 * perMetre, y0: y0 * perMetre, x1: x1 * perMetre, y1: y1 * perMetre }, metresPerPixel: 1 / perMetre }
}
