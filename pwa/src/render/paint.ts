import { sharp } from './blur'
import { headsIn, SHOWS, VALUE, X, Y } from './lumps'
import { FIELDS, FIRE, GRAIN_X, GRAIN_Y, KINDS, LIGHT, MASS, TAU, TINT, type Grid, type Smoke } from './fluid/grid'
import { fine, sample } from './fluid/resample'
import { lumpsAt, type Breadth, type Lumpy } from './fluid/force'
import { STEP_S } from './fluid/step'
import { ignite, soft, tongues } from './glow'
import type { Noise } from './noise'
import { mixSmoke, opacity, veil, type Light } from './tone'

// One layer of smoke to pixels: first its body, the depth of every fine cell with
// the grain it took along, and the glow of what burns; then its skin, the colour
// with light from the upper left on the lumps. The two may be done in two frames
// of the screen, and the first half in parts. Only cells in or next to smoke are visited.

/** What one layer remembers between paints. */
export interface Canvas {
  pixels: Uint8ClampedArray<ArrayBuffer>
  /** Glow of each fine cell, and the coarse cells that still glow. */
  glow: Float32Array
  lit: Uint8Array
  /** How uneven each fine cell is, as a share of its depth; and the height of its face, for the light on it. Both with a border. */
  grain: Float32Array
  face: Float32Array
  /** How much harder the lumps of each coarse cell bite where smoke ends. */
  bites: Float32Array
  /** Colour of the coarse cell at work, and lumps of the row at work. */
  colour: Float32Array
  boil: Boil
}

export function makeCanvas({ nx, ny }: Grid): Canvas {
  const border = (2 * nx + 2) * (2 * ny + 2)
  return {
    pixels: new Uint8ClampedArray(16 * nx * ny),
    glow: new Float32Array(border), lit: new Uint8Array((nx + 2) * (ny + 2)), bites: new Float32Array((nx + 2) * (ny + 2)),
    grain: new Float32Array(border), face: new Float32Array(border), colour: new Float32Array(3), boil: makeBoil(),
  }
}

/** Takes over from a canvas of other cells what lasts from one painting to the next. */
export function takeSeen(from: Canvas, old: Grid, to: Canvas, grid: Grid): void {
  sample(from.glow, to.glow, fine(old), fine(grid), 1)
  sample(from.grain, to.grain, fine(old), fine(grid), 1)
  to.lit.fill(1) // what does not glow is found out by the next painting
}

/** Rows of the body of the smoke, from one to before another, and how many steps after it was painted last. */
export interface Rows { from: number; to: number; steps: number }

/** The first half of painting one layer of smoke: all rows, or some of them at a time from the topmost down. */
export function paintBody(grid: Grid, smoke: Smoke, canvas: Canvas, noise: Noise, breadth: Breadth, { from, to, steps }: Rows): void {
  gives[GLOW] = followsIn(steps, STAYS)
  gives[GRAIN] = followsIn(steps, LINGERS)
  const { ny, nx, row } = grid
  const { near, busy } = smoke
  const { lit, face, boil } = canvas
  if (from === 1) face.fill(0)
  for (let j = from; j < to; j++) {
    boilAt(boil, breadth, j, grid.cellM)
    for (let i = 1; i <= nx; i++) {
      const c = j * row + i
      if (near[c] === 0 && busy[c] === 0 && lit[c] === 0) continue
      deepen(grid, smoke, canvas, noise, boil, c, i, j)
      lit[c] = kindle(grid, smoke, canvas, noise, i, j) ? 1 : 0
    }
  }
  if (to > ny) extend(face, grid.fineRow, 2 * nx, 2 * ny)
}

/** The second half: RGBA pixels, 2nx by 2ny. */
export function paintSkin(grid: Grid, smoke: Smoke, canvas: Canvas, light: Light): void {
  const { ny, nx, row } = grid
  const { near, busy } = smoke
  const { lit, pixels } = canvas
  pixels.fill(0)
  for (let j = 1; j <= ny; j++) {
    for (let i = 1; i <= nx; i++) {
      const c = j * row + i
      if (near[c] === 1 || busy[c] === 1 || lit[c] === 1) shade(grid, smoke, canvas, light, c, i, j)
    }
  }
}

// How uneven smoke is: a little where it flows smoothly, in streaks drawn out
// along its way, and strongly where it churns, in lumps. Chosen by us, by eye.
const STREAKS = 0.45
const LUMPS = 0.6

// Thin smoke hangs in soft veils: more uneven for its depth than a dense stream, or
// nobody would see it move, and with less of its finer streaks. Chosen by us, by eye.
const VEILS = 0.85

// What its face is made of: the depth itself, and its unevenness. The first is
// weak, so that the edge of an opening neither darkens a thin band of smoke nor
// stands out as a rim.
const BODY = 0.1
const SKIN = 0.9

/** Calm smoke is silken: its streaks hide and show the wall, but cast this share less of a shadow. Chosen by us, by eye. */
const SILKEN = 0.4

// What the functions below hand each other: in arrays, as numbers that go from
// function to function by themselves become garbage.

/** How the row at work boils: the share of its larger lumps, and then of either size how many of them a cell is broad, how far they have risen, and which heads show. */
type Boil = Float64Array
const SHARE = 0
const LUMPS_NOW = 1
const LUMPS_NEXT = 4
const PER_CELL = 0
const RISEN = 1
const SHOW = 2
const makeBoil = (): Boil => new Float64Array(7)
const lumpy: Lumpy = { size: 1, next: 1, share: 0 }

/** How far what was seen before gives way in one painting: the glow, and the grain. */
const gives = new Float64Array(2)
const GLOW = 0
const GRAIN = 1

/** Of the two cells at work how clear their grain still is, how many grains a cell is broad, which heads on them show, and how sharp an eye sees them pass. */
const pair = new Float64Array(4)
const CLEAR = 0
const GRAINS = 1
const GRAINS_SHOW = 2
const TOLD = 3

function boilAt(boil: Boil, breadth: Breadth, j: number, cellM: number): void {
  lumpsAt(breadth, j, lumpy)
  boil[SHARE] = lumpy.share
  boilSize(boil, LUMPS_NOW, lumpy.size, breadth.risenM, cellM)
  boilSize(boil, LUMPS_NEXT, lumpy.next, breadth.risenM, cellM)
}

function boilSize(boil: Boil, at: number, size: number, risenM: number, cellM: number): void {
  boil[at + PER_CELL] = (0.5 * cellM) / size
  boil[at + RISEN] = risenM / size
  boil[at + SHOW] = headsIn(HEADS * boil[at + PER_CELL]!)
}

/** The lumps that a row throws up by itself, at the spot that many fine cells across and down. */
function boils(boil: Boil, noise: Noise, across: number, down: number): void {
  const share = boil[SHARE]!
  const { spot } = noise
  let sum = 0
  if (share < 1) {
    boilsOf(boil, LUMPS_NOW, noise, across, down)
    sum = (1 - share) * spot[VALUE]!
  }
  if (share > 0) {
    boilsOf(boil, LUMPS_NEXT, noise, across, down)
    sum += share * spot[VALUE]!
  }
  spot[VALUE] = sum
}

function boilsOf(boil: Boil, at: number, noise: Noise, across: number, down: number): void {
  const { spot } = noise
  spot[X] = across * boil[at + PER_CELL]!
  spot[Y] = down * boil[at + PER_CELL]! + boil[at + RISEN]!
  billow(noise, boil, at + SHOW)
}

/** Optical depth of four fine cells with the grain that the smoke took along, and the lumps that it throws up on its way. */
function deepen(grid: Grid, { now, kind }: Smoke, { grain, face, bites }: Canvas, noise: Noise, boil: Boil, c: number, i: number, j: number): void {
  const { fineRow, rough } = grid
  const { spot } = noise
  const churns = rough[c]! > 1 ? 1 : rough[c]!
  const perCellM = 0.5 * grid.cellM
  const speed = speedAt(grid, c)
  const seen = churns > 0 ? sharp((speed * boil[LUMPS_NOW + PER_CELL]!) / perCellM) : 1
  const bare = bareness(kind, c * KINDS)
  const catches = gives[GRAIN]!
  bites[c] = BITES * churns * seen
  for (let b = 0; b < 2; b++) {
    const y = 2 * j - 1 + b
    const left = y * fineRow + 2 * i - 1
    unwind(now, left * FIELDS, fineRow * FIELDS)
    const clear = pair[CLEAR]!
    const perCell = clear > 0 ? pair[GRAINS]! : 0
    const passes = (speed * perCell) / perCellM
    const fibres = clear > 0 && churns < 1 ? fibrous(perCell, passes) : 0
    const told = sharp(passes)
    pair[TOLD] = told
    pair[GRAINS_SHOW] = headsIn(HEADS * perCell)
    for (let cell = left; cell < left + 2; cell++) {
      const o = cell * FIELDS
      const tau = now[o]!
      if (tau < 0.02) {
        grain[cell] = 0
        continue
      }
      const folded = folds(tau)
      const churning = folded > churns ? folded : churns
      let calm = 0
      let carried = 0
      let boiled = 0
      if (clear > 0) {
        if (churning < 1) {
          streak(noise, now, o, fibres)
          calm = clear * (1 - churning) * spot[VALUE]!
          carried = calm
        }
        if (churning > 0) {
          spot[X] = now[o + GRAIN_X]! / tau
          spot[Y] = now[o + GRAIN_Y]! / tau
          billow(noise, pair, GRAINS_SHOW)
          carried += clear * churning * LUMPS * spot[VALUE]!
        }
      }
      if (clear < 1 && churns > 0) {
        boils(boil, noise, cell - y * fineRow, y)
        boiled = (1 - clear) * churns * LUMPS * spot[VALUE]!
      }
      const uneven = grain[cell]! + catches * (told * carried + seen * boiled - grain[cell]!)
      grain[cell] = uneven
      face[cell] = BODY * lump(tau) + SKIN * (uneven + bare * (carried + boiled - uneven) - SILKEN * told * calm) * bodyOf(tau)
    }
  }
}

// The face of dark smoke is sharp however fast it passes, as an eye that follows it sees
// it: light on it changes too little to flash, which that on pale smoke does. From where
// it starts to blur to where it all does, as lightness. Chosen by us; tested by the flash counter.
const DARK = 0.3
const PALE = 0.75

/** How sharp the face of a coarse cell's smoke is, however fast it passes. */
function bareness(kind: Float32Array, o: number): number {
  const mass = kind[o + MASS]!
  return mass > 1e-4 ? clamp01((PALE - kind[o + LIGHT]! / mass) / (PALE - DARK)) : 0
}

/** How fast the gas of a coarse cell goes across the picture. */
function speedAt({ u, v, windU }: Grid, c: number): number {
  const across = u[c]! + windU
  return Math.sqrt(across * across + v[c]! * v[c]!)
}

// Grain that is finer than a cell cannot be drawn, and grain that the stream has
// pulled askew looks like marble: what varies along the stream then varies across
// it. Both in grains a cell, from where it starts to go to where it is gone. Chosen by us, by eye.
const FINE_FROM = 0.24
const FINE_GONE = 0.54
const ASKEW_FROM = 0.08
const ASKEW_GONE = 0.24

/**
 * Notes of a cell how clear the grain still is: 1 as it left the opening, 0 where streams
 * of different age are wound together; and how many grains a fine cell is broad or high,
 * whichever is more: 0 where smoke ends.
 */
function unwind(now: Float32Array, o: number, down: number): void {
  const tau = now[o + TAU]!
  const right = now[o + FIELDS]!
  const below = now[o + down]!
  pair[CLEAR] = 1
  pair[GRAINS] = 0
  if (tau < 0.02 || right < 0.02 || below < 0.02) return
  const x = now[o + GRAIN_X]! / tau
  const y = now[o + GRAIN_Y]! / tau
  const across = Math.abs(x - now[o + FIELDS + GRAIN_X]! / right)
  const along = Math.abs(y - now[o + FIELDS + GRAIN_Y]! / right)
  const askew = along + Math.abs(x - now[o + down + GRAIN_X]! / below)
  const high = Math.abs(y - now[o + down + GRAIN_Y]! / below)
  pair[CLEAR] = Math.min(clamp01((FINE_GONE - across - along) / (FINE_GONE - FINE_FROM)), clamp01((ASKEW_GONE - askew) / (ASKEW_GONE - ASKEW_FROM)))
  pair[GRAINS] = across > high ? across : high
}

// Smoke that hides even a lamp (optical depth 8, the top cut of density in
// content/scales) shows soft folds on its face, however calmly it flows.
const FOLDS_FROM = 5
const FOLDS_FULL = 11
const FOLDS = 0.6
const folds = (tau: number) => FOLDS * clamp01((tau - FOLDS_FROM) / (FOLDS_FULL - FOLDS_FROM))

// Slow smoke out of a large opening has fibres besides: its sheets take seconds to
// pass, and an eye has nothing else to see it move by. They are there while fewer of
// its sheets pass in a second than this, and as long as cells can carry them, both
// from where they start to fade to where they are gone. Chosen by us, by eye.
const FIBRES = 0.5
const PASS_FROM = 0.5
const PASS_GONE = 1.1
const CARRIED_FROM = 0.125
const CARRIED_GONE = 0.2

/** How much of its fibres shows: by how many cells broad its grains are, and how many pass in a second. */
const fibrous = (perCell: number, passes: number): number =>
  clamp01((PASS_GONE - passes) / (PASS_GONE - PASS_FROM)) * clamp01((CARRIED_GONE - perCell) / (CARRIED_GONE - CARRIED_FROM))

// Calm smoke is drawn out along its way: so many of each pass for a grain. They are the
// same everywhere: how much has left grows without end, and were it stretched by what
// differs from cell to cell, its streaks would be wound up ever tighter and stand.
// Chosen by us, by eye.
const BROAD = 0.7
const FINER = 1.5
const FINER_ACROSS = 2.6
const FIBRE = 3

/** Sheets and wisps of two sizes, drawn out along the way, and a share of fibres; fine enough that one sees slow smoke move. */
function streak(noise: Noise, now: Float32Array, o: number, fibres: number): void {
  const { spot } = noise
  const tau = now[o + TAU]!
  const thin = veil(tau)
  const x = now[o + GRAIN_X]! / tau
  const along = now[o + GRAIN_Y]! / tau
  spot[X] = x
  spot[Y] = BROAD * along
  noise.read()
  const broad = spot[VALUE]!
  spot[X] = FINER_ACROSS * x + 13.1
  spot[Y] = FINER * along + 4.7
  noise.read()
  const finer = spot[VALUE]!
  let fibre = 0
  if (fibres > 0) {
    spot[X] = 6 * x + 7.7
    spot[Y] = FIBRE * along + 2.9
    noise.read()
    fibre = FIBRES * fibres * spot[VALUE]!
  }
  spot[VALUE] = (STREAKS + thin * (VEILS - STREAKS)) * (0.42 * broad + (0.5 - 0.15 * thin) * finer + fibre)
}

// Heads are a little broader than a grain, and stand out from calm streaks at a glance. Chosen by us, by eye.
const HEADS = 0.9
const HIGH = 1.8

/** Heads upon heads with creases between them, as of a cauliflower; no mean. Which of them show is noted there. */
function billow({ lumps, spot }: Noise, shows: Float64Array, at: number): void {
  spot[X] = HEADS * spot[X]!
  spot[Y] = HEADS * spot[Y]!
  spot[SHOWS] = shows[at]!
  lumps.read(spot)
  spot[VALUE] = HIGH * spot[VALUE]!
}

// The glow follows the burning gas with this delay, which no flicker faster
// than about 2 Hz survives. Chosen by us; tested by the flash counter.
const AFTERGLOW_S = 0.3
const STAYS = 1 - Math.min(1, STEP_S / AFTERGLOW_S)

// Unevenness is seen as through a shutter that is open this long: what no eye follows
// runs together, however it came about. Chosen by us; tested by the flash counter.
const SHUTTER_S = 0.055
const LINGERS = 1 - Math.min(1, STEP_S / SHUTTER_S)

/** The share by which something follows in some steps of the smoke, of which so much stays as it was in each. */
function followsIn(steps: number, staysInOne: number): number {
  let stays = 1
  for (let n = Math.min(steps, 40); n > 0; n--) stays *= staysInOne
  return 1 - stays
}

// Flame shows how fast it goes by what the smoke in it takes along, at once: its own
// tongues come too late for that. So much of that unevenness is in its brightness.
// Chosen by us, by eye; tested by the flash counter.
const LICKS = 0.5
const licked = (fire: number, uneven: number) => fire * (1 + LICKS * fire * uneven)

/** Lets the glow of four fine cells follow what burns in them. Returns whether any is left. */
function kindle({ fineRow }: Grid, { now }: Smoke, { glow }: Canvas, noise: Noise, i: number, j: number): boolean {
  const follows = gives[GLOW]!
  let any = false
  for (let k = 0; k < 4; k++) {
    const cell = (2 * j - 1 + (k >> 1)) * fineRow + 2 * i - 1 + (k & 1)
    const before = glow[cell]!
    if (before === 0 && now[cell * FIELDS + FIRE] === 0) continue
    const after = before + follows * (tongues(now, cell * FIELDS, noise, pair[TOLD]!) - before)
    glow[cell] = after > 0.004 ? after : 0
    any ||= after > 0.004
  }
  return any
}

/** Lets the smoke run on past the edge of the picture, so that the edge casts no relief. */
function extend(face: Float32Array, row: number, columns: number, rows: number): void {
  face.copyWithin(0, row, 2 * row)
  face.copyWithin((rows + 1) * row, rows * row, (rows + 1) * row)
  for (let c = 0; c < face.length; c += row) {
    face[c] = face[c + 1]!
    face[c + columns + 1] = face[c + columns]!
  }
}

/** Four pixels: smoke over flame, most of the smoke being behind it. */
function shade({ nx, row, fineRow }: Grid, smoke: Smoke, canvas: Canvas, light: Light, c: number, i: number, j: number): void {
  const { face, grain, pixels, glow, lit, colour } = canvas
  const { now } = smoke
  const bites = canvas.bites[c]!
  const burns = lit[c]! + lit[c - 1]! + lit[c + 1]! + lit[c - row]! + lit[c + row]! > 0 // what glows next to it shines in
  if (!burns && smoke.busy[c] === 0) return
  mixColour(smoke.kind, c * KINDS, light, colour)
  for (let k = 0; k < 4; k++) {
    const x = 2 * i - 2 + (k & 1)
    const y = 2 * j - 2 + (k >> 1)
    const cell = (y + 1) * fineRow + x + 1
    const tau = now[cell * FIELDS]!
    const fire = burns ? licked(soft(glow, cell, fineRow), grain[cell]!) : 0
    if (tau <= 0.004 && fire <= 0.01) continue
    const p = 4 * (y * 2 * nx + x)
    const body = bodyOf(tau)
    const raise = body > 0 ? light.relief * body * (relief(face, cell, fineRow) + hollow(face[cell]!, tau)) : 0
    const lift = 26 * raise
    pixels[p] = colour[0]! * (1 + raise) + lift
    pixels[p + 1] = colour[1]! * (1 + raise) + lift
    pixels[p + 2] = colour[2]! * (1 + raise) + lift
    const bitten = bites > 0.05 ? 1 + bites * rim(now, cell * FIELDS, fineRow * FIELDS, tau) : 1
    const smokeA = hides(tau, grain[cell]! * bitten)
    pixels[p + 3] = 255 * smokeA
    if (fire > 0.02) ignite(fire, tau, smokeA, pixels, p)
  }
}

/** The smoke's own colour in the light it stands in. */
function mixColour(kind: Float32Array, o: number, light: Light, colour: Float32Array): void {
  const share = kind[o + MASS]! > 1e-4 ? 1 / kind[o + MASS]! : 0
  const bright = clamp01(kind[o + LIGHT]! * share)
  const tint = clamp01(kind[o + TINT]! * share)
  mixSmoke(light, bright, tint, colour)
}

/**
 * Share hidden by smoke of optical depth tau that is so uneven here. The grain
 * goes into what is hidden, not into the depth: so that lumpy smoke hides on the
 * whole as much as smooth smoke of the same depth.
 */
function hides(tau: number, uneven: number): number {
  const plain = opacity(tau)
  return clamp01(plain + uneven * plain * (1 - plain))
}

// How much harder the lumps bite where smoke ends: its outline is knobbly, not
// blurred. Chosen by us, by eye.
const BITES = 3.2

/** How steeply smoke ends here, as a share of its depth: 0 well within it, 1 on its rim. */
function rim(now: Float32Array, o: number, down: number, tau: number): number {
  const across = now[o + FIELDS]! - now[o - FIELDS]!
  const downward = now[o + down]! - now[o - down]!
  const steep = (0.9 * (Math.abs(across) + Math.abs(downward))) / (tau + 0.02) - 0.12
  return steep < 0 ? 0 : steep > 1 ? 1 : steep
}

/** Light from the upper left on the face of the smoke: -1 to 1. */
function relief(face: Float32Array, cell: number, down: number): number {
  const ul = cell - down - 1
  const ur = ul + 2
  const dl = cell + down - 1
  const dr = dl + 2
  const across = face[ur]! + 2 * face[cell + 1]! + face[dr]! - face[ul]! - 2 * face[cell - 1]! - face[dl]!
  const downward = face[dl]! + 2 * face[cell + down]! + face[dr]! - face[ul]! - 2 * face[cell - down]! - face[ur]!
  const slope = 0.34 * across + 0.48 * downward
  return slope / (1 + Math.abs(slope))
}

/** Less light falls between heads than upon them: this share of their height. Chosen by us, by eye. */
const HOLLOW = 0.5
const hollow = (height: number, tau: number) => HOLLOW * (height - BODY * lump(tau))

/** How much of a body smoke has: none on thin smoke, through which light passes. */
const bodyOf = (tau: number) => (tau < 0.3 ? 0 : tau > 2 ? 1 : (tau - 0.3) / 1.7)

/** Height of the face for a depth: grows ever more slowly. */
const lump = (tau: number) => tau / (1 + 0.3 * tau)

const clamp01 = (x: number) => (x < 0 ? 0 : x > 1 ? 1 : x)
