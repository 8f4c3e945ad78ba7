import { VALUE, X, Y } from '../lumps'
import type { Noise } from '../noise'
import { HEAT, KINDS, MASS, type Grid, type Smoke } from './grid'

const GRAVITY = 9.81 // m/s2

/** Hot gas rises. */
export function buoyancy({ ny, nx, row, v }: Grid, { kind, busy }: Smoke, dt: number): void {
  const lift = GRAVITY * dt
  for (let j = 1; j <= ny; j++) {
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      if (busy[c] !== 0) v[c]! -= lift * kind[c * KINDS + HEAT]!
    }
  }
}

// A plume's radius grows by about an eighth of the height risen (Morton, Taylor
// and Turner 1956, entrainment 0.1 and growth 6/5 of it; from memory, to be
// confirmed). Its breadth grows by twice that, and by half as much again while
// it is near its opening and uneven (chosen by us, by eye).
const GROWTH = 0.32

/** The plumes at each coarse row: how broad they are, and how broad the opening below them is that they left by. */
export interface Breadth {
  at: Float32Array
  opening: Float32Array
  /** How far eddies that rise with the gas have come by now, m. */
  risenM: number
}

export const makeBreadth = ({ ny, cellM }: Grid): Breadth => {
  const breadth = { at: new Float32Array(ny + 2), opening: new Float32Array(ny + 2), risenM: 0 }
  clearBreadth(breadth, cellM)
  return breadth
}

/** Without any plume, that of a small opening everywhere. */
export function clearBreadth({ at, opening }: Breadth, cellM: number): void {
  at.fill(1e3)
  opening.fill(4 * cellM)
}

/** Takes over what another grid's rows have, at the same heights. */
export function takeBreadth(from: Breadth, fromCellM: number, to: Breadth, cellM: number): void {
  for (let j = 0; j < to.at.length; j++) {
    const row = Math.max(0, Math.min(from.at.length - 1, Math.round(((j - 0.5) * cellM) / fromCellM + 0.5)))
    to.at[j] = from.at[row]!
    to.opening[j] = from.opening[row]!
  }
  to.risenM = from.risenM
}

/** Notes an opening of this breadth whose lower edge is at a row: above it, the narrowest plume counts. */
export function addPlume({ at, opening }: Breadth, row: number, openingM: number, cellM: number): void {
  for (let j = 0; j < at.length; j++) {
    const broad = openingM + GROWTH * Math.max(0, row - j) * cellM
    if (j > row + 2 && at[j]! < 1e3) continue
    if (broad >= at[j]!) continue
    at[j] = broad
    opening[j] = openingM
  }
}

// A smooth stream mixes less than a churning one: this share, chosen by us, by eye.
const CALM = 0.4

// Where gas speeds up as it rises it draws together; this share of that is in depth,
// which this plane does not show. Chosen by us, by eye.
const IN_DEPTH = 0.25

/** Lets a plume take in fresh air at the rate that makes it grow as plumes do. */
export function mixAir({ ny, nx, row, u, v, rough, mixing, spread, cellM }: Grid, { kind, busy }: Smoke, breadth: Breadth): void {
  for (let j = 1; j <= ny; j++) {
    const rate = GROWTH / breadth.at[j]!
    const slope = (0.5 * IN_DEPTH) / cellM
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      if (busy[c] === 0) continue
      const tau = kind[c * KINDS + MASS]!
      if (tau < 0.02) continue
      const speed = Math.sqrt(u[c]! * u[c]! + v[c]! * v[c]!)
      const eager = CALM + (1 - CALM) * rough[c]!
      mixing[c]! += rate * eager * speed * (tau > 0.3 ? 1 : tau / 0.3)
      spread[c]! += slope * (v[c + row]! - v[c - row]!)
    }
  }
}

// How hard churning gas curls: strength of the curl kept alive, and of fresh
// eddies as a share of the local speed a second. Chosen by us, by eye.
const KEEP_CURL = 3
const FRESH_EDDIES = 9

// Fresh eddies are as broad as the opening where the gas leaves it, and this
// many times as broad higher up. Two fixed sizes, since eddies of one size keep
// their shape as they rise. Chosen by us, by eye.
export const NEAR_EDDY = 0.9
export const HIGH_EDDY = 2.6

/** How much of the eddies at a row are the broad ones of a grown plume: none at the opening, all from three breadths up. */
export function grownAt({ at, opening }: Breadth, j: number): number {
  const grown = (at[j]! / opening[j]! - 1) / 2
  return grown < 0 ? 0 : grown > 1 ? 1 : grown
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
    const grown = grownAt(breadth, j)
    const scale = 1 / (breadth.opening[j]! * (grown > 0.5 ? HIGH_EDDY : NEAR_EDDY))
    const strength = FRESH_EDDIES * Math.abs(2 * grown - 1) * dt // one size fades out before the other comes up
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
