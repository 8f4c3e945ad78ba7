import { VALUE, X, Y } from '../lumps'
import type { Noise } from '../noise'
import { HEAT, KINDS, MASS, type Grid } from './grid'

const GRAVITY = 9.81 // m/s2

// Smoke before the building and behind it share one plane of air. Where one plume
// covers another they do not add up: each rises and mixes as it would alone.

/** The more of something that a coarse cell has, before the building or behind it. */
function moreOf({ front, back }: Grid, c: number, what: number): number {
  const before = front.busy[c] === 0 ? 0 : front.kind[c * KINDS + what]!
  const behind = back.busy[c] === 0 ? 0 : back.kind[c * KINDS + what]!
  return before > behind ? before : behind
}

/** Hot gas rises. */
export function buoyancy(grid: Grid, dt: number): void {
  const { ny, nx, row, v, front, back } = grid
  const lift = GRAVITY * dt
  for (let j = 1; j <= ny; j++) {
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      if (front.busy[c] !== 0 || back.busy[c] !== 0) v[c]! -= lift * moreOf(grid, c, HEAT)
    }
  }
}

// A plume's radius grows by about an eighth of the height risen (Morton, Taylor
// and Turner 1956, entrainment 0.1 and growth 6/5 of it; from memory, to be
// confirmed). Its breadth grows by twice that, and by half as much again while
// it is near its opening and uneven (chosen by us, by eye). What is taken in before
// and behind it widens it in depth, which this plane does not show: only what its
// sides take in pushes smoke across the picture.
const GROWTH = 0.32

/** The plumes at each coarse row. */
export interface Breadth {
  /** Their lesser side, which their lumps go by, and that of the opening below them that they left by. */
  at: Float32Array
  opening: Float32Array
  /** How broad they are on the picture. */
  across: Float32Array
  /** How far eddies that rise with the gas have come by now, m. */
  risenM: number
}

export const makeBreadth = ({ ny, cellM }: Grid): Breadth => {
  const rows = () => new Float32Array(ny + 2)
  const breadth = { at: rows(), opening: rows(), across: rows(), risenM: 0 }
  clearBreadth(breadth, cellM)
  return breadth
}

/** Without any plume, that of a small opening everywhere. */
export function clearBreadth({ at, opening, across }: Breadth, cellM: number): void {
  at.fill(1e3)
  across.fill(1e3)
  opening.fill(4 * cellM)
}

/** Takes over what another grid's rows have, at the same heights. */
export function takeBreadth(from: Breadth, fromCellM: number, to: Breadth, cellM: number): void {
  for (let j = 0; j < to.at.length; j++) {
    const row = Math.max(0, Math.min(from.at.length - 1, Math.round(((j - 0.5) * cellM) / fromCellM + 0.5)))
    to.at[j] = from.at[row]!
    to.opening[j] = from.opening[row]!
    to.across[j] = from.across[row]!
  }
  to.risenM = from.risenM
}

/** A plume as it leaves: the lesser side and the breadth of its opening, m; its upper and lower edge, in rows; and how far it is thrown toward the eye or away for each root of a metre that it rises. */
export interface Start { lesser: number; broad: number; top: number; bottom: number; thrown: number }

/** Notes a plume: above its opening, the narrowest counts. */
export function addPlume({ at, opening, across }: Breadth, { lesser, broad, top, bottom, thrown }: Start, cellM: number): void {
  for (let j = 0; j < at.length; j++) {
    if (j > bottom + 2 && at[j]! < 1e3) continue
    const risen = Math.max(0, bottom - j) * cellM
    across[j] = Math.min(across[j]!, broad + GROWTH * risen)
    const grown = lesser + GROWTH * (risen + detour(Math.max(0, top - j) * cellM, thrown))
    if (grown >= at[j]!) continue
    at[j] = grown
    opening[j] = lesser
  }
}

/** How much longer than its rise the way of a plume is that is thrown out as it bends up, m. */
const detour = (risen: number, thrown: number) => Math.sqrt(risen * risen + thrown * thrown * risen) - risen

// A smooth stream mixes less than a churning one: this share, chosen by us, by eye.
const CALM = 0.4

// Where gas speeds up as it rises it draws together; this share of that is in depth,
// which this plane does not show. Chosen by us, by eye.
const IN_DEPTH = 0.25

/** Lets a plume take in fresh air at the rate that makes it grow as plumes do. */
export function mixAir(grid: Grid, breadth: Breadth): void {
  const { ny, nx, row, u, v, rough, mixing, spread, cellM, front, back } = grid
  mixing.fill(0)
  for (let j = 1; j <= ny; j++) {
    const rate = GROWTH / breadth.across[j]!
    const slope = (0.5 * IN_DEPTH) / cellM
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      if (front.busy[c] === 0 && back.busy[c] === 0) continue
      const tau = moreOf(grid, c, MASS)
      if (tau < 0.02) continue
      const speed = Math.sqrt(u[c]! * u[c]! + v[c]! * v[c]!)
      const eager = CALM + (1 - CALM) * rough[c]!
      mixing[c] = rate * eager * speed * (tau > 0.3 ? 1 : tau / 0.3)
      spread[c]! += slope * (v[c + row]! - v[c - row]!)
    }
  }
}

// How hard churning gas curls: strength of the curl kept alive, and of fresh
// eddies as a share of the local speed a second. Chosen by us, by eye.
const KEEP_CURL = 3
const FRESH_EDDIES = 9

// Fresh eddies are as broad as the opening where the gas leaves it, and this many
// times as broad higher up, doubled each time that the plume has doubled again. A
// few fixed sizes, since eddies of one size keep their shape as they rise. Chosen
// by us, by eye.
const NEAR_EDDY = 0.9
const HIGH_EDDY = 2.6

// Heads on the face are about as broad as the opening, and half an eddy higher up.
const NEAR_LUMP = 0.8
const HIGH_LUMP = 0.5 * HIGH_EDDY

/** How many times as broad as high up at first the eddies are of a plume that has grown so many times as broad as its opening; 0 near it. */
const doubled = (grown: number) => (grown < 2 ? 0 : grown < 4 ? 1 : grown < 8 ? 2 : 4)
const eddy = (times: number) => (times === 0 ? NEAR_EDDY : times * HIGH_EDDY)
const lump = (times: number) => (times === 0 ? NEAR_LUMP : times * HIGH_LUMP)

/** Lumps of a row: their breadth, that of those which take their place a little higher, and the share of these. */
export interface Lumpy { size: number; next: number; share: number }

// Where one size of lumps takes the place of another it comes up over this share of
// the breadth there: at one height they would show a seam. Chosen by us, by eye.
const SEAM = 0.15

/** Finds the lumps of a row. */
export function lumpsAt({ at, opening }: Breadth, j: number, into: Lumpy): void {
  const grown = at[j]! / opening[j]!
  const low = doubled(grown * (1 - SEAM))
  const high = doubled(grown * (1 + SEAM))
  into.size = opening[j]! * lump(low)
  into.next = opening[j]! * lump(high)
  const changes = low === 0 ? 2 : 4 * low
  into.share = low === high ? 0 : (grown / changes - 1 / (1 + SEAM)) / (1 / (1 - SEAM) - 1 / (1 + SEAM))
}

/** How strong fresh eddies are at a row: one size fades out before the next comes up. */
function freshAt({ at, opening }: Breadth, j: number): number {
  const grown = at[j]! / opening[j]!
  const off = Math.min(Math.abs(grown - 2), Math.abs(grown - 4) / 2, Math.abs(grown - 8) / 4)
  return off > 1 ? 1 : off
}

/** Keeps eddies alive and breaks new ones off, only where the gas churns. */
export function churn(grid: Grid, noise: Noise, breadth: Breadth, dt: number): void {
  const { nx, ny, row, u, v, rough, scratch, cellM } = grid
  const { spot } = noise
  const slope = 0.5 / cellM
  for (let j = 1; j <= ny; j++) {
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      scratch[c] = slope * (v[c + 1]! - v[c - 1]! - u[c + row]! + u[c - row]!)
    }
  }
  for (let j = 2; j < ny; j++) {
    const scale = 1 / (breadth.opening[j]! * eddy(doubled(breadth.at[j]! / breadth.opening[j]!)))
    const strength = FRESH_EDDIES * freshAt(breadth, j) * dt
    const y = (j * cellM + breadth.risenM) * scale
    for (let i = 2; i < nx; i++) {
      const c = j * row + i
      const how = rough[c]!
      if (how < 0.02) continue
      const gx = Math.abs(scratch[c + 1]!) - Math.abs(scratch[c - 1]!)
      const gy = Math.abs(scratch[c + row]!) - Math.abs(scratch[c - row]!)
      const keep = (KEEP_CURL * how * dt * cellM * scratch[c]!) / (Math.sqrt(gx * gx + gy * gy) + 1e-3)
      const fresh = strength * how * Math.sqrt(u[c]! * u[c]! + v[c]! * v[c]!)
      const x = i * cellM * scale
      spot[X] = x
      spot[Y] = y
      noise.readRough()
      u[c]! += keep * gy + fresh * spot[VALUE]!
      spot[X] = x + 31.7
      spot[Y] = y
      noise.readRough()
      v[c]! += -keep * gx + fresh * spot[VALUE]!
    }
  }
}
