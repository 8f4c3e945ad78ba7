import type { Noise } from '../noise'
import { FIELDS, HEAT, type Grid, type Smoke } from './grid'

const GRAVITY = 9.81 // m/s2

/** Hot gas rises: each coarse cell takes the mean heat of the four fine cells on it. */
export function buoyancy(grid: Grid, smoke: Smoke, dt: number): void {
  const { ny, nx, row, fineRow, v } = grid
  const { now, first, last } = smoke
  for (let j = 1; j <= ny; j++) {
    const top = 2 * j - 1
    const from = Math.min(first[top]!, first[top + 1]!)
    const to = Math.max(last[top]!, last[top + 1]!)
    if (from > to) continue
    const end = Math.min(nx, (to + 1) >> 1)
    for (let i = Math.max(1, (from + 1) >> 1); i <= end; i++) {
      const a = (top * fineRow + 2 * i - 1) * FIELDS + HEAT
      const b = a + fineRow * FIELDS
      const heat = 0.25 * (now[a]! + now[a + FIELDS]! + now[b]! + now[b + FIELDS]!)
      v[j * row + i]! -= GRAVITY * heat * dt
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
export function mixAir(grid: Grid, smoke: Smoke, breadth: Breadth): void {
  const { ny, nx, row, fineRow, u, v, rough, mixing, cellM } = grid
  const { now, first, last } = smoke
  for (let j = 1; j <= ny; j++) {
    const top = 2 * j - 1
    const from = first[top]!
    const to = last[top]!
    if (from > to) continue
    const rate = GROWTH / breadthAt(breadth, j, cellM)
    const end = Math.min(nx, (to + 1) >> 1)
    for (let i = Math.max(1, (from + 1) >> 1); i <= end; i++) {
      const tau = now[(top * fineRow + 2 * i - 1) * FIELDS]!
      if (tau < 0.02) continue
      const c = j * row + i
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
