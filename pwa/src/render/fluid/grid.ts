// The state of the air in front of the building, in a plane parallel to the
// wall that is looked at. Row 0 is the top; velocities are in m/s, u to the
// right and v downward. Air lives on a coarse grid, smoke on one twice as fine.
// Every array has a border one cell wide, so that no loop asks whether it is
// at the edge.

/** What one fine cell of smoke holds, in this order. */
export const TAU = 0 // optical depth along the line of sight
export const LIGHT = 1 // lightness times optical depth
export const TINT = 2 // tint times optical depth
export const HEAT = 3 // (T - T outside) / T: what makes it rise
export const STEAM = 4 // the part of TAU that evaporates
export const FIRE = 5 // glow of burning gas, 0 to 1
export const GRAIN_X = 6 // where in the opening it left, times optical depth, in grains
export const GRAIN_Y = 7 // and how much had left before it
export const FIELDS = 8

/** Smoke in front of the building, or behind it. */
export interface Smoke {
  now: Float32Array
  next: Float32Array
  /** First and last column of each row that holds anything; first > last where the row is empty. */
  first: Int32Array
  last: Int32Array
  /** Where smoke may get to within the next step: the same, widened. */
  reachFirst: Int32Array
  reachLast: Int32Array
}

export interface Grid {
  /** Coarse cells, without the border. */
  nx: number
  ny: number
  /** Width of a coarse cell in metres. */
  cellM: number
  /** Length of a coarse row with its border, and of a fine one. */
  row: number
  fineRow: number
  u: Float32Array
  v: Float32Array
  uNext: Float32Array
  vNext: Float32Array
  /** How much the gas churns here, 0 to 1. */
  rough: Float32Array
  roughNext: Float32Array
  pressure: Float32Array
  /** Outflow toward the eye that spreads in the plane, 1/s. */
  spread: Float32Array
  /** Fresh air mixed in from before and behind the plane, 1/s: it widens a plume, thins and cools it. */
  mixing: Float32Array
  /** Scratch: divergence, curl. */
  scratch: Float32Array
  front: Smoke
  back: Smoke
  /** Wind along the plane, m/s; u and v are relative to it. */
  windU: number
}

export function makeGrid(nx: number, ny: number, cellM: number): Grid {
  const row = nx + 2
  const coarse = () => new Float32Array(row * (ny + 2))
  return {
    nx, ny, cellM, row, fineRow: 2 * nx + 2,
    u: coarse(), v: coarse(), uNext: coarse(), vNext: coarse(),
    rough: coarse(), roughNext: coarse(), pressure: coarse(), spread: coarse(), mixing: coarse(), scratch: coarse(),
    front: makeSmoke(nx, ny), back: makeSmoke(nx, ny), windU: 0,
  }
}

function makeSmoke(nx: number, ny: number): Smoke {
  const cells = (2 * nx + 2) * (2 * ny + 2) * FIELDS
  const rows = 2 * ny + 2
  return {
    now: new Float32Array(cells),
    next: new Float32Array(cells),
    first: new Int32Array(rows).fill(2 * nx + 1),
    last: new Int32Array(rows),
    reachFirst: new Int32Array(rows),
    reachLast: new Int32Array(rows),
  }
}

/** Notes that a fine cell now holds smoke. */
export function touch(smoke: Smoke, i: number, j: number): void {
  if (i < smoke.first[j]!) smoke.first[j] = i
  if (i > smoke.last[j]!) smoke.last[j] = i
}
