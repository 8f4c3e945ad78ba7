import type { Scenario, Side } from '../wire.gen'
import { drawBuilding } from './draw/building'
import { drawCutaway } from './draw/cutaway'
import { drawGround } from './draw/ground'
import { drawSeenFire } from './draw/flame'
import { drawMark } from './draw/openings'
import { paletteOf, type Daylight, type Palette } from './draw/palette'
import { drawHaze } from './draw/haze'
import { glassHash, mix } from './glass'
import { penOf, type Canvas, type Pen, type Sheet } from './draw/pen'
import { drawPaces } from './draw/pace'
import { drawWind, type Wind } from './draw/wind'
import { Film } from './film'
import { KeepUp } from './keep-up'
import { emptyFrame, type FrameLook } from './frame'
import { Halves } from './halves'
import { HeadStart } from './head-start'
import { layOut } from './layout'
import { cellsFor, Picture, timesFor } from './picture'
import { STEP_S } from './fluid/step'
import { Turns } from './turns'
import { ACROSS, facingOf, frameView, type View } from './view'
import { Wisps } from './wisps'
import { NARROW, toward, WHOLE, zoomFor, type Zoom } from './zoom'

/** What a scene shows now; read afresh for every picture. */
export interface Showing {
  scenario: Scenario
  side: Side
  frame: FrameLook | null
  cutaway: boolean
  us: boolean
  selected: string | undefined
  /** The selected opening fills the picture. */
  near: boolean
  /** The smoke stands still; the wall may still fade and openings move. */
  paused: boolean
  wind?: Wind | undefined
  /** The page's theme, and the light; left out, that which the theme goes with. */
  theme?: string | undefined
  light?: Daylight | undefined
  /** Size of the canvas on the page, in points, and pixels to a point. */
  size: { width: number; height: number; density: number }
  /** Seen from across the road. */
  far?: boolean
  /** One flat colour for all that smoke stands before, and nothing drawn but smoke: for the instrument that judges the picture. */
  backdrop?: string
  /** The head start of the smoke is reckoned piece by piece, a little at each picture, so that no tap waits for it. */
  inPieces?: boolean
}

/** How fast the wall fades. Chosen by us. */
const FADE_PER_S = 3
/** Script time that the head start takes of a frame, and of one in which the building is drawn. Nothing waits for more than that. Chosen by us. */
const HEAD_START_MS = 3.6
const BESIDE_DRAWING_MS = 1.8
/** Share by which smoke comes up at each picture once it has caught up. Chosen by us. */
const COMES = 0.12
/** A fire that jumps by more than this was wound back or on: its smoke starts ahead again. Chosen by us. */
const JUMP_S = 8

/**
 * Draws one scene on one canvas: steps the smoke at its own fixed rate, paints
 * between steps, and draws what stands still only when it changes.
 */
export class Show {
  readonly #canvas: Sheet
  readonly #ctx: Canvas
  #view: View | undefined
  /** The smoke, once its head start is over. */
  #smoke: { picture: Picture; film: Film } | undefined
  #ahead: HeadStart | undefined
  /** It was taken over and waits to be painted. */
  #unpainted = false
  #wisps = new Wisps()
  #scenario: Scenario | undefined
  #places = ''
  #made = ''
  #madeFine = -1
  #ground: OffscreenCanvas | undefined
  #wall: OffscreenCanvas | undefined
  #wallKey = NaN
  #fade = 0
  #zoom: Zoom = WHOLE
  /** Width of the canvas on the page, in points. */
  #widthPt = 1
  readonly #turns = new Turns()
  readonly #halves = new Halves()
  readonly #keep = new KeepUp()
  /** Seconds that the picture has moved. */
  #timeS = 0
  /** How far the smoke has come up since its head start was over. */
  #come = 0
  /** Time of the fire in the newest frame; none yet. */
  #seenS = NaN

  constructor(canvas: Sheet) {
    this.#canvas = canvas
    this.#ctx = penOf(canvas)
  }

  /** Whether the smoke still works through its head start, and is not shown yet. */
  get catchingUp(): boolean { return this.#ahead !== undefined }

  get #picture(): Picture { return this.#ahead?.picture ?? this.#smoke!.picture }

  /** Moves the scene on by real seconds and draws it. Returns script milliseconds. */
  advance(showing: Showing, seconds: number, inStills: boolean): number {
    const began = performance.now()
    const fresh = this.#prepare(showing)
    const target = showing.cutaway ? 1 : 0
    const change = inStills ? 1 : seconds * FADE_PER_S
    this.#fade += Math.max(-change, Math.min(change, target - this.#fade))
    this.#approach(showing, inStills ? 1 : seconds)
    const turn = this.#turns.take(seconds, showing.paused, inStills)
    const { steps, draw } = turn
    const forAhead = !showing.inPieces ? Infinity : draw ? BESIDE_DRAWING_MS : HEAD_START_MS
    const takenOver = showing.frame && !(fresh && showing.inPieces) && this.#getAhead(showing, showing.frame, forAhead)
    if (showing.inPieces && !inStills && (takenOver || this.#unpainted)) {
      // Its first picture takes three frames: it is taken over, its body is painted, and it is drawn.
      if (!takenOver) this.#smoke!.picture.prepare()
      this.#unpainted = !!takenOver
      this.#turns.ask()
      return performance.now() - began
    }
    this.#timeS += steps * STEP_S
    if (!this.#ahead) for (let n = 0; n < steps; n++) this.#stepOnce(showing)
    if (draw) this.#draw(showing, inStills)
    else if (steps > 0) this.#smoke?.picture.prepare(this.#halves.share)
    const took = performance.now() - began
    if (inStills || this.#ahead) return took
    this.#keep.note(took, seconds)
    this.#halves.note(turn, took)
    return took
  }

  #approach({ cutaway, near, selected }: Showing, seconds: number): void {
    const view = this.#view!
    const place = near ? view.layout.places.find(({ id }) => id === selected) : undefined
    const at = zoomFor(view, { cutaway, narrow: this.#narrow, place })
    if (at !== this.#zoom) this.#zoom = toward(this.#zoom, at, seconds)
  }

  /** How much of the smoke is left over the section, before the building and behind it. */
  get #through(): number { return 1 - 0.8 * this.#fade }

  get #narrow(): boolean { return this.#widthPt < NARROW }

  /** Goes on with the head start, also while the fire is paused: one may wind it back, or look at another side. Returns whether the smoke was taken over. */
  #getAhead(showing: Showing, frame: FrameLook, ms: number): boolean {
    const { tS } = frame.header
    if (tS < this.#seenS - 0.5 || tS > this.#seenS + JUMP_S) this.#beginAhead(showing)
    this.#seenS = tS
    if (showing.wind) this.#picture.wind(showing.wind.m_s, showing.wind.from)
    if (!this.#ahead?.run(frame, this.#wisps, paletteOf(showing.theme, showing.light).smoke, ms)) return false
    this.#keep.expect(this.#ahead.msPerCell * timesFor(this.#view!))
    this.#remake(showing)
    this.#ahead = undefined
    return true
  }

  #beginAhead({ scenario }: Showing): void {
    this.#ahead = new HeadStart(scenario, this.#view!)
    this.#smoke = undefined
    this.#unpainted = false
    this.#come = 0
  }

  /** The same smoke on cells as fine as this device keeps up with. */
  #remake({ scenario }: Showing): void {
    const picture = new Picture(scenario, this.#view!, cellsFor(this.#view!, this.#keep.fineness))
    picture.takeOver(this.#picture)
    this.#smoke = { picture, film: new Film(picture.columns, picture.rows) }
    this.#madeFine = this.#keep.fineness
    this.#turns.ask()
  }

  #stepOnce({ frame }: Showing): void {
    const picture = this.#picture
    if (frame) picture.follow(frame)
    picture.step()
    this.#wisps.step(picture.inlets())
  }

  /** Makes the picture afresh when the building, the side or the size of the canvas changes. Returns whether it did. */
  #prepare(showing: Showing): boolean {
    const { scenario, side, size, far = false } = showing
    const density = Math.min(2, size.density || 1)
    const width = Math.max(1, Math.round(size.width * density))
    const height = Math.max(1, Math.round(size.height * density))
    this.#widthPt = size.width
    if (scenario !== this.#scenario) {
      this.#scenario = scenario
      this.#places = places(scenario)
    }
    const view = this.#view
    const same = view?.side === side && view.away > 1 === far && this.#canvas.width === width && this.#canvas.height === height
    if (same && this.#made === this.#places) {
      if (this.#smoke && this.#madeFine !== this.#keep.fineness) this.#remake(showing)
      return false
    }
    this.#made = this.#places
    this.#canvas.width = width
    this.#canvas.height = height
    this.#view = frameView(layOut(scenario), side, width / height, far ? ACROSS : 1)
    this.#wisps = new Wisps()
    this.#ground = undefined
    this.#wallKey = NaN
    this.#turns.ask()
    this.#beginAhead(showing)
    return true
  }

  #draw(showing: Showing, inStills: boolean): void {
    const view = this.#view!
    const palette = paletteOf(showing.theme, showing.light)
    const { width, height } = this.#canvas
    const frame = showing.frame ?? emptyFrame(showing.scenario.compartments.length, showing.scenario.openings.length)
    this.#smoke?.picture.paint(palette.smoke)
    const ctx = this.#ctx
    if (showing.backdrop) {
      this.#drawBare(ctx, showing.backdrop)
      return
    }
    this.#drawStill(showing, frame, palette)
    ctx.setTransform(1, 0, 0, 1, 0, 0)
    ctx.globalAlpha = 1
    ctx.drawImage(this.#ground!, 0, 0)
    this.#zoomPixels(ctx)
    ctx.globalAlpha = this.#through
    if (this.#smoke?.picture.showsBehind) this.#smoke.film.show(ctx, this.#smoke.picture.back, width, height)
    ctx.setTransform(1, 0, 0, 1, 0, 0)
    ctx.globalAlpha = 1 - 0.9 * this.#fade
    ctx.drawImage(this.#wall!, 0, 0)
    const pen = this.#pen(ctx, view)
    for (const place of view.layout.places) {
      if (facingOf(view, place) === 'eye') drawSeenFire(pen, view, place, frame, this.#timeS)
    }
    ctx.globalAlpha = 1
    const cut = { faded: this.#fade, outsideC: showing.scenario.ambient.t_c, us: showing.us, brief: this.#narrow, leftM: this.#zoom.x, rightM: this.#zoom.x + view.widthM / this.#zoom.scale }
    drawCutaway(pen, view, palette, frame, cut, this.#timeS)
    if (this.#smoke) {
      if (this.#fade < 0.5) this.#wisps.draw(pen, palette, this.#smoke.picture.inlets())
      this.#drawSmoke(ctx, this.#smoke, inStills)
    }
    ctx.globalAlpha = 1
    if (view.away > 1) drawHaze(this.#pen(ctx, view), view, palette)
    if (inStills && this.#fade < 0.5) drawPaces(this.#pen(ctx, view), view, palette, frame)
    const { ambient } = showing.scenario
    const wind: Wind = showing.wind ?? { m_s: ambient.wind_m_s ?? 0, from: ambient.wind_from }
    drawWind(this.#pen(ctx, view), view, palette, wind, showing.us)
    const marked = view.layout.places.find((place) => place.id === showing.selected)
    const facing = marked && facingOf(view, marked)
    const inSight = facing === 'eye' || facing === 'right' || facing === 'up' || (facing === undefined && this.#fade > 0.5)
    if (marked && inSight) drawMark(this.#pen(ctx, view), view, palette, marked, this.#fade > 0.5)
  }

  /** The smoke before the building, which comes up once its head start is over. */
  #drawSmoke(ctx: Canvas, { picture, film }: { picture: Picture; film: Film }, inStills: boolean): void {
    this.#come = inStills ? 1 : Math.min(1, this.#come + COMES)
    this.#zoomPixels(ctx)
    ctx.globalAlpha = this.#through * this.#come
    film.show(ctx, picture.front, this.#canvas.width, this.#canvas.height)
  }

  /** The smoke alone. */
  #drawBare(ctx: Canvas, backdrop: string): void {
    const { width, height } = this.#canvas
    ctx.setTransform(1, 0, 0, 1, 0, 0)
    ctx.globalAlpha = 1
    ctx.fillStyle = backdrop
    ctx.fillRect(0, 0, width, height)
    if (!this.#smoke) return
    const { picture, film } = this.#smoke
    for (const pixels of [picture.back, picture.front]) {
      this.#zoomPixels(ctx)
      film.show(ctx, pixels, width, height)
    }
  }

  /** Ground and wall are drawn once and kept until something on them moves. */
  #drawStill({ scenario }: Showing, frame: FrameLook, palette: Palette): void {
    const view = this.#view!
    const key = wallHash(scenario, view, palette, frame, this.#zoom)
    if (key === this.#wallKey && this.#ground) return
    this.#wallKey = key
    this.#ground = this.#blank(this.#ground)
    drawGround(this.#pen(this.#ground.getContext('2d')!, view), view, palette)
    this.#wall = this.#blank(this.#wall)
    drawBuilding(this.#pen(this.#wall.getContext('2d')!, view), view, palette, frame)
  }

  /** A canvas of the size of the scene with nothing on it: the one given, where it fits. */
  #blank(old: OffscreenCanvas | undefined): OffscreenCanvas {
    const { width, height } = this.#canvas
    if (old?.width !== width || old.height !== height) return new OffscreenCanvas(width, height)
    const ctx = old.getContext('2d')!
    ctx.setTransform(1, 0, 0, 1, 0, 0)
    ctx.clearRect(0, 0, width, height)
    return old
  }

  #pen(ctx: Pen['ctx'], view: View): Pen {
    const { x, y, scale } = this.#zoom
    const perMetre = (scale * this.#canvas.width) / view.widthM
    ctx.setTransform(perMetre, 0, 0, perMetre, -x * perMetre, -y * perMetre)
    return { ctx, pixel: view.widthM / scale / Math.max(1, this.#widthPt) }
  }

  /** Puts what is drawn in pixels of the whole picture in its place. */
  #zoomPixels(ctx: Canvas): void {
    const { x, y, scale } = this.#zoom
    const perMetre = (scale * this.#canvas.width) / this.#view!.widthM
    ctx.setTransform(scale, 0, 0, scale, -x * perMetre, -y * perMetre)
  }
}

/** A number that changes when anything on the wall does; a sum, so that watching for it leaves nothing behind. */
function wallHash({ openings }: Scenario, view: View, palette: Palette, frame: FrameLook, { x, y, scale }: Zoom): number {
  let hash = mix(mix(mix(palette.daylight, Math.round(1000 * x)), Math.round(1000 * y)), Math.round(1000 * scale))
  for (let k = 0; k < openings.length; k++) hash = mix(hash, Math.round(100 * (frame.openings[k]?.open ?? openings[k]!.open ?? 0)))
  return mix(hash, glassHash(view, frame))
}

/** Everything about a scenario that moves a line of the drawing. */
const places = ({ compartments, openings }: Scenario) =>
  JSON.stringify([
    compartments.map((c) => [c.id, c.x_m, c.y_m, c.floor_m, c.width_m, c.depth_m, c.height_m]),
    openings.map((o) => [o.id, o.side, o.sill_m, o.width_m, o.height_m, o.area_m2, o.at_m]),
  ])
