import { STEP_S } from '../../src/render/fluid/step'
import type { FrameLook } from '../../src/render/frame'
import { Show, type Showing } from '../../src/render/show'
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

/** Draws a scene at fixed steps, whatever the machine's speed, and returns its pictures as PNG in base64. */
export async function drawWall(take: WallTake): Promise<string[]> {
  const { scenario, side, frame, near, cutaway = false, theme = 'light', inStills = false } = take
  document.documentElement.dataset['theme'] = theme
  const canvas = document.createElement('canvas')
  canvas.style.cssText = `display:block;width:${take.width}px;height:${take.height}px`
  document.body.replaceChildren(canvas)
  const showing: Showing = { scenario, side, frame, near, cutaway, us: false, selected: near ? take.opening : undefined, paused: false }
  const show = new Show(canvas)
  performance.now = () => 0 // no frame is ever late: the machine's speed is not to be seen in a photograph
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
