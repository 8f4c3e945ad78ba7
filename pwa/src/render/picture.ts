import type { Scenario, Side } from '../wire.gen'
import { aim, aimAt, type Aimed } from './aim'
import { draw } from './draught'
import { eavesOf, holdOf, type Eave } from './eaves'
import { putHold } from './fluid/hold'
import { makeGrid, type Grid } from './fluid/grid'
import type { Fading } from './fluid/fading'
import { resample } from './fluid/resample'
import { addPlume, clearBreadth, makeBreadth, takeBreadth, type Breadth, type Start } from './fluid/force'
import { PARTS, STEP_S } from './fluid/step'
import { OPENING_NAMES, stillOpening, type FrameLook, type OpeningLook } from './frame'
import { heatOf, type Inlet, type Jet } from './jet'
import { noiseOf, type Noise } from './noise'
import { burnsOutPerM, stamp } from './stamp'
import { makeCanvas, paintBody, paintSkin, takeSeen, type Canvas, type Rows } from './paint'
import type { Light } from './tone'
import { facingOf, openArea, type View } from './view'

/** How fine the smoke is drawn: fine cells in the whole picture, where no opening is low. Falls when a phone cannot keep up. */
export const FINENESS = [24000, 12000, 7500, 4500, 3000, 1340] as const

// Smoke is seen to move in an opening that is this many fine cells high, so that a low
// neutral plane leaves it a few; a lower one has its whole picture drawn on more
// cells, up to so many times as many. Chosen by us.
const CELLS_HIGH = 14
const MOST_TIMES = 2.5

/** How many times as many cells a picture needs for its lowest opening toward the eye. */
export function timesFor(view: View): number {
  let lowest = Infinity
  for (const place of view.layout.places) {
    if (place.opening.kind === 'leak' || facingOf(view, place) !== 'eye') continue
    const { y0, y1 } = openArea(view, place, 1)
    lowest = Math.min(lowest, y1 - y0)
  }
  const lacks = (CELLS_HIGH / lowest) * Math.sqrt((view.widthM * view.heightM) / FINENESS[0])
  return Math.max(1, Math.min(MOST_TIMES, lacks * lacks))
}

/** Fine cells of a picture that is drawn so fine. */
export const cellsFor = (view: View, fineness: number): number => timesFor(view) * FINENESS[fineness]!

/** Where the unevenness of all smoke starts from; another gives other lumps of the same smoke. Chosen by us. */
const SEED = 20261

/** An opening that smoke may leave by; `left` lumps of it have. */
interface Source extends Aimed { left: number }

/**
 * The smoke of one building seen from one side. The same frames in the same
 * order give the same pixels everywhere: it knows no clock, no screen and no
 * chance, only steps.
 */
export class Picture {
  readonly view: View
  readonly grid: Grid
  readonly #front: Canvas
  readonly #back: Canvas
  readonly #noise: Noise
  readonly #sources: Source[]
  readonly #inlets: { source: Source; inlet: Inlet }[]
  readonly #drawnIn: readonly Inlet[]
  readonly #outsideC: number
  readonly #fading: Fading
  readonly #eaves: readonly Eave[]
  /** Share by which an eave brakes at each step: it does so in a row of cells, through which gas takes longer where they are coarse. */
  readonly #brakes: number
  readonly #breadth: Breadth
  #windMS = 0
  #steps = 0
  /** Steps after which the body of the smoke was begun last, whether it ever was on these cells, and its rows that are due. */
  #painted = 0
  #hasBody = false
  readonly #rows: Rows = { from: 1, to: 1, steps: 0 }

  constructor(scenario: Scenario, view: View, cells = cellsFor(view, 0), seed = SEED) {
    this.view = view
    this.#noise = noiseOf(seed)
    const { nx, ny } = shapeOf(view.widthM / view.heightM, cells)
    this.grid = makeGrid(nx, ny, this.view.heightM / ny)
    this.#breadth = makeBreadth(this.grid)
    this.#front = makeCanvas(this.grid)
    this.#back = makeCanvas(this.grid)
    this.#outsideC = scenario.ambient.t_c
    this.#eaves = eavesOf(view)
    this.#brakes = Math.min(1, ny / shapeOf(view.widthM / view.heightM, cellsFor(view, 0)).ny)
    this.#fading = fadingOf(this.view.layout.top)
    this.#sources = this.view.layout.places.flatMap((place) => {
      const facing = facingOf(this.view, place)
      return facing ? [{ ...aimAt(view, place, facing, stillOpening(), this.grid.cellM, this.#outsideC), left: 0 }] : []
    })
    this.#inlets = this.#sources.filter(({ facing }) => facing === 'eye' || facing === 'right')
      .map((source) => ({ source, inlet: { index: source.place.index, area: { ...source.whole }, reach: 1, speedMS: 0 } }))
    this.#drawnIn = this.#inlets.map(({ inlet }) => inlet)
    this.wind(scenario.ambient.wind_m_s ?? 0, scenario.ambient.wind_from)
  }

  /** Seconds of smoke drawn so far. */
  get timeS(): number { return this.#steps * STEP_S }

  /** The pixels of the smoke before the building, and behind it. */
  get front(): Uint8ClampedArray<ArrayBuffer> { return this.#front.pixels }
  get back(): Uint8ClampedArray<ArrayBuffer> { return this.#back.pixels }

  /** Whether any smoke is behind the building. */
  get showsBehind(): boolean { return this.grid.back.any }

  /** Width and height of the pixel arrays. */
  get columns(): number { return 2 * this.grid.nx }
  get rows(): number { return 2 * this.grid.ny }

  /** Sets the wind: from the left or right it bends smoke across, from the front it presses it back. */
  wind(speedMS: number, from: Side | undefined): void {
    this.#windMS = speedMS
    const order = ['A', 'B', 'C', 'D'] as const
    const turned = from === undefined ? -1 : (order.indexOf(from) - order.indexOf(this.view.side) + 4) % 4
    const across = [0.25, 1, -0.25, -1][turned] ?? 0
    // The lee of the wall and the ground slow it: a third of the free wind, chosen by us.
    this.grid.windU = 0.34 * across * speedMS
  }

  get windMS(): number { return this.#windMS }

  /** Takes over a new frame; what shows follows it within a quarter of a second, so that nothing jumps. */
  follow(frame: FrameLook): void {
    for (const source of this.#sources) {
      const now = frame.openings[source.place.index]
      if (now) ease(source.look, now)
    }
  }

  /** Goes on from where the smoke of another picture is: of the same view, on finer or coarser cells. */
  takeOver(other: Picture): void {
    other.#finish()
    resample(other.grid, this.grid)
    takeSeen(other.#front, other.grid, this.#front, this.grid)
    takeSeen(other.#back, other.grid, this.#back, this.grid)
    this.#sources.forEach((source, k) => {
      const { look, left } = other.#sources[k]!
      Object.assign(source.look, look)
      source.left = left
    })
    takeBreadth(other.#breadth, other.grid.cellM, this.#breadth, this.grid.cellM)
    this.grid.windU = other.grid.windU
    this.#windMS = other.#windMS
    this.#steps = other.#steps
    this.#painted = other.#painted
    this.#hasBody = false
  }

  /** Makes ready what all pictures share, for about so many ms of script; the first step does the rest. Returns whether it is ready. */
  makeReady(ms: number): boolean { return this.#noise.makeReady(ms) }

  /** Draws one step of smoke further. */
  step(): void {
    this.#leave()
    for (const part of PARTS) part(this.grid, this.#fading, this.#noise, this.#breadth)
    this.#steps++
  }

  /** The same in parts, for what must not take long at a time: the first steps of a script are slow everywhere. */
  *stepInParts(): Generator<void> {
    this.#leave()
    for (const part of PARTS) {
      yield
      part(this.grid, this.#fading, this.#noise, this.#breadth)
    }
    this.#steps++
  }

  /** Lets smoke leave all openings for one step. */
  #leave(): void {
    this.#finish()
    this.#noise.makeReady()
    const { grid } = this
    const time = this.timeS
    grid.spread.fill(0)
    grid.held.fill(0)
    const breadth = this.#breadth
    clearBreadth(breadth, grid.cellM)
    let fastest = 0
    let burnsOut = Infinity
    for (const source of this.#sources) {
      const jet = aim(this.view, source, grid.cellM)
      if (jet.depth > 0.01 && jet.look.outVelocityMS > 0.005) {
        addPlume(breadth, startOf(jet, grid.cellM), grid.cellM)
        fastest = Math.max(fastest, rises(jet))
        burnsOut = Math.min(burnsOut, burnsOutPerM(jet)) // the longest flame counts
      }
      source.left += stamp(grid, jet, source.left, this.#noise, time)
      draw(grid, jet)
      if (jet.facing === 'eye' && jet.depth > 0.01) this.#bank(jet)
    }
    breadth.risenM += fastest * STEP_S
    grid.burnsOut = burnsOut < Infinity ? burnsOut : 0
  }

  /**
   * Does the first half of painting what was stepped, or a share of it, where a screen
   * has a frame to spare before it is shown. What is left, `paint` does: the pixels are the same.
   */
  prepare(share = 1): void {
    const rows = this.#rows
    const steps = this.#steps - this.#painted
    if (!this.#hasBody || steps > 0) {
      this.#painted = this.#steps
      this.#hasBody = true
      rows.from = 1
      rows.steps = steps
    }
    rows.to = 1 + Math.round(share * this.grid.ny)
    if (rows.to <= rows.from) return
    paintBody(this.grid, this.grid.front, this.#front, this.#noise, this.#breadth, rows)
    if (this.showsBehind) paintBody(this.grid, this.grid.back, this.#back, this.#noise, this.#breadth, rows)
    rows.from = rows.to
  }

  /** Paints what is left of a body that was begun, before its smoke moves on. */
  #finish(): void {
    if (this.#hasBody && this.#steps === this.#painted) this.prepare()
  }

  /** Turns the smoke into pixels, in `front` and `back`. */
  paint(light: Light): void {
    this.prepare()
    paintSkin(this.grid, this.grid.front, this.#front, light)
    if (this.showsBehind) paintSkin(this.grid, this.grid.back, this.#back, light)
  }

  /** The openings in sight, with the air that each draws in; the same objects every time. */
  inlets(): readonly Inlet[] {
    for (const { source, inlet } of this.#inlets) {
      const { area, plane, look } = aim(this.view, source, this.grid.cellM)
      inlet.area.x0 = area.x0
      inlet.area.x1 = area.x1
      inlet.area.y0 = Math.max(area.y0, Math.min(plane, area.y1))
      inlet.area.y1 = area.y1
      inlet.reach = Math.max(0.05, area.x1 - area.x0)
      inlet.speedMS = look.open < 0.02 ? 0 : look.inVelocityMS
    }
    return this.#drawnIn
  }

  /** Lets the eaves above a stream hold it back. */
  #bank({ area, look }: Jet): void {
    const heat = heatOf(look, this.#outsideC)
    for (const eave of this.#eaves) putHold(this.grid, eave, this.#brakes * holdOf(eave, area, look.outVelocityMS, heat))
  }
}

/** Rows that are given up for whole cells across. Chosen by us. */
const ROWS_GIVEN = 2

/**
 * Coarse cells across and down. They are square and the picture's breadth is
 * seldom a whole number of them: of a few heights the one counts that fits best,
 * as all smoke is stretched by what is left.
 */
export function shapeOf(aspect: number, cells: number): { nx: number; ny: number } {
  const most = Math.round(Math.sqrt(cells / aspect) / 2)
  let best = { nx: 0, ny: 0, off: Infinity }
  for (let ny = Math.max(12, most); ny >= Math.max(12, most - ROWS_GIVEN); ny--) {
    const nx = Math.max(12, Math.round(ny * aspect))
    const off = Math.abs(nx / (ny * aspect) - 1)
    if (off < best.off) best = { nx, ny, off }
  }
  return best
}

/** How a jet's plume starts. Of a level hole only the breadth is seen, and that of one on a side wall is its height. */
function startOf({ area, facing, look, outsideC }: Jet, cellM: number): Start {
  const high = Math.max(2 * cellM, area.y1 - area.y0)
  const wide = Math.max(2 * cellM, area.x1 - area.x0)
  const level = facing === 'up' || facing === 'over'
  const ahead = facing === 'eye' || facing === 'away'
  return {
    lesser: level ? wide : Math.min(wide, high), broad: level || ahead ? wide : high,
    top: area.y0 / cellM, bottom: area.y1 / cellM, thrown: ahead ? throwOf(look.outVelocityMS, heatOf(look, outsideC)) : 0,
  }
}

/** Metres that level speed carries gas out by the time its warmth has lifted it one metre: from then on as the root of the rise. */
const throwOf = (speedMS: number, heat: number) => speedMS * Math.sqrt(2 / (9.81 * Math.max(0.05, heat)))

/** Speed at which eddies rise in a plume: that of its outflow, or what its warmth gives it over the opening's height. */
const rises = ({ area, look, outsideC }: Jet): number =>
  Math.max(0.7 * look.outVelocityMS, Math.sqrt(9.81 * heatOf(look, outsideC) * Math.max(0.02, area.y1 - area.y0)))

/** Rates by which air and smoke fade, scaled with the building so that a box and a house look alike. */
function fadingOf(topM: number): Fading {
  const turn = Math.sqrt(topM / 9.81) // the time gas takes to rise by the building's height; Froude
  return { drag: 0.12 / turn, still: 0.5 / turn, sideways: 0.45 / turn, thin: 0.09 / turn, cool: 0.1 / turn, dry: 0.55 / turn, burn: 0.6 / turn }
}

const EASE = 1 - Math.exp(-STEP_S / 0.12) // a time constant of 0.12 s, chosen by us

function ease(shown: OpeningLook, now: OpeningLook): void {
  for (const name of OPENING_NAMES) {
    const a = shown[name]
    const b = now[name]
    if (a === b) continue
    shown[name] = Number.isFinite(a) && Number.isFinite(b) ? a + EASE * (b - a) : b
  }
  shown.flow = now.flow
}
