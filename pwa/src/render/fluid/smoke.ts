import type { Fading } from './fading'
import { FIELDS, FIRE, GRAIN_X, GRAIN_Y, HEAT, LIGHT, STEAM, TAU, TINT, type Grid, type Smoke } from './grid'

// Below this optical depth a cell counts as clear: under half a percent of the
// light. Chosen by us.
const FAINT = 0.004

/**
 * Carries smoke by the air. Only rows and columns near what there is are
 * visited, so that a clear sky costs nothing. The array that is written to is
 * all zeros before, and the one read from is emptied after.
 */
export function carrySmoke(grid: Grid, smoke: Smoke, fading: Fading, dt: number): void {
  const { nx, ny, fineRow } = grid
  const { now, next, first, last, reachFirst, reachLast } = smoke
  widen(smoke, reachOf(grid, dt), 2 * nx, 2 * ny)
  const keep = {
    tau: 1 - fading.thin * dt, heat: 1 - fading.cool * dt, steam: 1 - fading.dry * dt, fire: 1 - fading.burn * dt,
  }
  for (let j = 1; j <= 2 * ny; j++) {
    if (reachFirst[j]! <= reachLast[j]!) carryRow(grid, smoke, keep, j, dt)
  }
  for (let j = 1; j <= 2 * ny; j++) {
    const from = smoke.reachFirst[j]!
    if (from <= reachLast[j]!) now.fill(0, (j * fineRow + from) * FIELDS, (j * fineRow + reachLast[j]! + 1) * FIELDS)
    trim(next, j * fineRow, reachFirst[j]!, reachLast[j]!, first, last, j, 2 * nx)
  }
  smoke.now = next
  smoke.next = now
}

interface Keep { tau: number; heat: number; steam: number; fire: number }

function carryRow(grid: Grid, smoke: Smoke, keep: Keep, j: number, dt: number): void {
  const { nx, ny, row, fineRow, u, v, mixing, cellM, windU } = grid
  const { now, next } = smoke
  const cells = (2 * dt) / cellM
  const right = 2 * nx + 0.99
  const bottom = 2 * ny + 0.99
  const coarse = (j >> 1) * row // the coarse rows above and below this fine one, and their weights
  const wTop = j & 1 ? 0.25 : 0.75
  const end = smoke.reachLast[j]!
  for (let i = smoke.reachFirst[j]!; i <= end; i++) {
    const wLeft = i & 1 ? 0.25 : 0.75
    const c = coarse + (i >> 1)
    const d = c + row
    const w00 = wLeft * wTop
    const w10 = wTop - w00
    const w01 = wLeft - w00
    const w11 = 1 - w00 - w10 - w01
    let x = i - cells * (w00 * u[c]! + w10 * u[c + 1]! + w01 * u[d]! + w11 * u[d + 1]! + windU)
    let y = j - cells * (w00 * v[c]! + w10 * v[c + 1]! + w01 * v[d]! + w11 * v[d + 1]!)
    x = x < 0 ? 0 : x > right ? right : x
    y = y < 0 ? 0 : y > bottom ? bottom : y
    const x0 = x | 0
    const y0 = y | 0
    const fx = x - x0
    const fy = y - y0
    const p = (y0 * fineRow + x0) * FIELDS
    const q = p + FIELDS
    const r = p + fineRow * FIELDS
    const s = r + FIELDS
    const wd = fx * fy
    const wb = fx - wd
    const wc = fy - wd
    const wa = 1 - fx - wc
    const tau = wa * now[p]! + wb * now[q]! + wc * now[r]! + wd * now[s]!
    const fire = wa * now[p + FIRE]! + wb * now[q + FIRE]! + wc * now[r + FIRE]! + wd * now[s + FIRE]!
    if (tau < FAINT && fire < FAINT) continue
    const steam = wa * now[p + STEAM]! + wb * now[q + STEAM]! + wc * now[r + STEAM]! + wd * now[s + STEAM]!
    const dried = tau > FAINT ? 1 - (steam * (1 - keep.steam)) / tau : 1
    const fresh = 1 - dt * (w00 * mixing[c]! + w10 * mixing[c + 1]! + w01 * mixing[d]! + w11 * mixing[d + 1]!)
    const kept = fresh * keep.tau * (dried < 0 ? 0 : dried)
    const o = (j * fineRow + i) * FIELDS
    next[o + TAU] = kept * tau
    next[o + LIGHT] = kept * (wa * now[p + LIGHT]! + wb * now[q + LIGHT]! + wc * now[r + LIGHT]! + wd * now[s + LIGHT]!)
    next[o + TINT] = kept * (wa * now[p + TINT]! + wb * now[q + TINT]! + wc * now[r + TINT]! + wd * now[s + TINT]!)
    const gx = wa * now[p + GRAIN_X]! + wb * now[q + GRAIN_X]! + wc * now[r + GRAIN_X]! + wd * now[s + GRAIN_X]!
    const gy = wa * now[p + GRAIN_Y]! + wb * now[q + GRAIN_Y]! + wc * now[r + GRAIN_Y]! + wd * now[s + GRAIN_Y]!
    next[o + GRAIN_X] = kept * gx
    next[o + GRAIN_Y] = kept * gy
    next[o + HEAT] = fresh * fresh * fresh * keep.heat * (wa * now[p + HEAT]! + wb * now[q + HEAT]! + wc * now[r + HEAT]! + wd * now[s + HEAT]!)
    next[o + STEAM] = fresh * keep.steam * keep.tau * steam
    next[o + FIRE] = keep.fire * fire
  }
}

/** How many fine cells the fastest air crosses in a step. */
function reachOf({ u, v, windU, cellM }: Grid, dt: number): number {
  let most = 0
  for (let c = 0; c < u.length; c++) {
    const along = Math.abs(u[c]! + windU)
    const up = Math.abs(v[c]!)
    if (along > most) most = along
    if (up > most) most = up
  }
  return Math.min(24, Math.ceil((2 * most * dt) / cellM) + 1)
}

/** The rows and columns that smoke may reach within one step. */
function widen({ first, last, reachFirst, reachLast }: Smoke, reach: number, columns: number, rows: number): void {
  reachFirst.fill(columns + 1)
  reachLast.fill(0)
  for (let j = 1; j <= rows; j++) {
    if (first[j]! > last[j]!) continue
    const lo = Math.max(1, first[j]! - reach)
    const hi = Math.min(columns, last[j]! + reach)
    for (let k = Math.max(1, j - reach); k <= Math.min(rows, j + reach); k++) {
      if (lo < reachFirst[k]!) reachFirst[k] = lo
      if (hi > reachLast[k]!) reachLast[k] = hi
    }
  }
}

/** Notes the first and last column of a row that hold smoke or fire. */
function trim(
  field: Float32Array, row: number, from: number, to: number,
  first: Int32Array, last: Int32Array, j: number, columns: number,
): void {
  let lo = from
  let hi = to
  while (lo <= hi && empty(field, row + lo)) lo++
  while (hi >= lo && empty(field, row + hi)) hi--
  first[j] = lo <= hi ? lo : columns + 1
  last[j] = lo <= hi ? hi : 0
}

const empty = (field: Float32Array, cell: number) => !field[cell * FIELDS] && !field[cell * FIELDS + FIRE]
