import { DAY } from '../../src/render/draw/palette'
import { Film } from '../../src/render/film'
import { STEP_S } from '../../src/render/fluid/step'
import { emptyFrame, type OpeningLook } from '../../src/render/frame'
import { layOut } from '../../src/render/layout'
import { Picture } from '../../src/render/picture'
import { frameView, openArea } from '../../src/render/view'
import type { Scenario, Side } from '../../src/wire.gen'

/** One scene to photograph: an opening with the numbers of its state, and the seed of its smoke. */
export interface Take {
  scenario: Scenario
  side: Side
  opening: string
  look: Partial<OpeningLook>
  seed: number
  /** Seconds of smoke before the first frame. */
  warmS: number
  frames: number
  /** Solver steps from one frame to the next. */
  every: number
}

/** Two strips of frames as PNG in base64, and what may be known of the scene. */
export interface Photograph {
  black: string
  white: string
  frames: number
  secondsBetween: number
  metresPerPixel: number
  opening: { x0: number; y0: number; x1: number; y1: number }
}

const WIDTH = 390 // a phone's points; a fine cell of the smoke is over two of them wide
const ASPECT = 0.85 // of the picture on a phone
const BESIDE = 0.55 // of the opening's shorter side is photographed all round: as far as the instrument looks, and a little more

/** Photographs the smoke at one opening, over black and over white, at fixed steps. */
export async function photograph(take: Take): Promise<Photograph> {
  const view = frameView(layOut(take.scenario), take.side, ASPECT)
  const place = view.layout.places.find(({ id }) => id === take.opening)
  if (!place) throw new Error(`opening ${take.opening} is not in the scenario`)
  const perMetre = WIDTH / view.widthM
  const crop = around(openArea(view, place, 1), perMetre)

  const picture = new Picture(take.scenario, view, undefined, take.seed)
  const film = new Film(picture.columns, picture.rows)
  const frame = emptyFrame(take.scenario.compartments.length, take.scenario.openings.length)
  Object.assign(frame.openings[place.index]!, take.look)
  const advance = () => {
    picture.follow(frame)
    picture.step()
  }
  const strips = ['#000', '#fff'].map((backdrop) => new Strip(backdrop, crop, take.frames))
  for (let k = 0; k < take.warmS / STEP_S; k++) advance()
  for (let k = 0; k < take.frames; k++) {
    picture.paint(DAY.smoke)
    for (const strip of strips) strip.add(k, (ctx) => film.show(ctx, picture.front, WIDTH, WIDTH / ASPECT))
    for (let n = 0; n < take.every; n++) advance()
  }
  const [black, white] = await Promise.all(strips.map((strip) => strip.png()))
  return {
    black: black!, white: white!, frames: take.frames, secondsBetween: take.every * STEP_S, metresPerPixel: 1 / perMetre, opening: crop.opening,
  }
}

interface Crop { left: number; top: number; width: number; height: number; opening: Photograph['opening'] }

/** The part of the picture that is photographed. */
function around({ x0, y0, x1, y1 }: Photograph['opening'], perMetre: number): Crop {
  const margin = BESIDE * Math.min(x1 - x0, y1 - y0) * perMetre
  const left = Math.floor(x0 * perMetre - margin)
  const top = Math.floor(y0 * perMetre - margin)
  return {
    left, top, width: Math.ceil(x1 * perMetre + margin) - left, height: Math.ceil(y1 * perMetre + margin) - top,
    opening: { x0: x0 * perMetre - left, x1: x1 * perMetre - left, y0: y0 * perMetre - top, y1: y1 * perMetre - top },
  }
}

/** Frames below each other on one canvas. */
class Strip {
  readonly #canvas: OffscreenCanvas
  readonly #ctx: OffscreenCanvasRenderingContext2D
  readonly #crop: Crop
  constructor(backdrop: string, crop: Crop, frames: number) {
    this.#crop = crop
    this.#canvas = new OffscreenCanvas(crop.width, crop.height * frames)
    this.#ctx = this.#canvas.getContext('2d', { willReadFrequently: true })!
    this.#ctx.fillStyle = backdrop
    this.#ctx.fillRect(0, 0, this.#canvas.width, this.#canvas.height)
  }

  add(k: number, draw: (ctx: OffscreenCanvasRenderingContext2D) => void): void {
    const { left, top, width, height } = this.#crop
    this.#ctx.save()
    this.#ctx.beginPath()
    this.#ctx.rect(0, k * height, width, height)
    this.#ctx.clip()
    this.#ctx.translate(-left, k * height - top)
    draw(this.#ctx)
    this.#ctx.restore()
  }

  png = (): Promise<string> => pngOf(this.#canvas)
}

/** A canvas as a PNG in base64. */
export async function pngOf(canvas: OffscreenCanvas | HTMLCanvasElement): Promise<string> {
  const blob = canvas instanceof OffscreenCanvas
    ? await canvas.convertToBlob({ type: 'image/png' })
    : await new Promise<Blob>((done) => { canvas.toBlob((made) => done(made!), 'image/png') })
  const bytes = new Uint8Array(await blob.arrayBuffer())
  let text = ''
  for (let k = 0; k < bytes.length; k += 8192) text += String.fromCharCode(...bytes.subarray(k, k + 8192))
  return btoa(text)
}
