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

/** The breadth of a plume at each coarse row: that of its opening, and growing as it rises. */
export interface Breadth {
  /** Row of the lowest opening that smokes, and the breadth there in metres. */
  row: number
  openingM: number
}

// A plume's radius grows by about an eighth of the height risen (Morton, Taylor
// and Turner 1956, entrainment 0.1 and growth 6/5 of it; from memory, to be
// confirmed). Its breadth grows by twice that, and by half as much again while
// it is near its opening and uneven (chosen by us, by eye).
const GROWTH = 0.32

// A smooth stream mixes less than a churning one: this share, chosen by us, by eye.
const CALM = 0.4

const breadthAt = ({ row, openingM }: Breadth, j: number, cellM: number) =>
  openingM + GROWTH * Math.max(0, row - j) * cellM

/** Lets a plume take in fresh air at the rate that makes it grow as plumes do. */
export function mixAir({ ny, nx, row, u, v, rough, mixing, cellM }: Grid, { kind, busy }: Smoke, breadth: Breadth): void {
  for (let j = 1; j <= ny; j++) {
    const rate = GROWTH / breadthAt(breadth, j, cellM)
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      if (busy[c] === 0) continue
      const tau = kind[c * KINDS + MASS]!
      if (tau < 0.02) continue
      const speed = Math.sqrt(u[c]! * u[c]! + v[c]! * v[c]!)
      const eager = CALM + (1 - CALM) * rough[c]!
      mixing[c]! += rate * eager * speed * (tau > 0.3 ? 1 : tau / 0.3)
    }
  }
}

// How hard churning gas curls: strength of the curl kept alive, and of fresh
// eddies as a share of the local speed a second. Chosen by us, by eye.
const KEEP_CURL = 3
const FRESH_EDDIES = 11

/** Keeps eddies alive and breaks new ones off, only where the gas churns. */
export function churn(grid: Grid, noise: Noise, breadth: Breadth, time: number, dt: number): void {
  const { nx, ny, row, u, v, rough, scratch, cellM } = grid
  const slope = 0.5 / cellM
  for (let j = 1; j <= ny; j++) {
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      scratch[c] = slope * (v[c + 1]! - v[c - 1]! - u[c + row]! + u[c - row]!)
    }
  }
  for (let j = 2; j < ny; j++) {
    const grain = (2.8 * cellM) / breadthAt(breadth, j, cellM)
    for (let i = 2; i < nx; i++) {
      const c = j * row + i
      const how = rough[c]!
      if (how < 0.02) continue
      const gx = Math.abs(scratch[c + 1]!) - Math.abs(scratch[c - 1]!)
      const gy = Math.abs(scratch[c + row]!) - Math.abs(scratch[c - row]!)
      const keep = (KEEP_CURL * how * dt * cellM * scratch[c]!) / (Math.sqrt(gx * gx + gy * gy) + 1e-3)
      const speed = Math.sqrt(u[c]! * u[c]! + v[c]! * v[c]!)
      const fresh = FRESH_EDDIES * how * speed * dt
      const rise = j * grain + (0.45 * time * speed * grain) / cellM
      u[c]! += keep * gy + fresh * noise.rough(i * grain, rise)
      v[c]! += -keep * gx + fresh * noise.rough(i * grain + 31.7, rise)
    }
  }
}
