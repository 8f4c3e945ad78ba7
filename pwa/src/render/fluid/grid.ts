// The state of the air in front of the building, in a plane parallel to the
// wall that is looked at. Row 0 is the top; velocities are in m/s, u to the
// right and v downward. Air, and what changes slowly from place to place, live
// on a coarse grid; what gives smoke its shape lives on one twice as fine.
// Every array has a border one cell wide, so that no loop asks whether it is
// at the edge.

/** What one fine cell of smoke holds, in this order. */
export const TAU = 0 // optical depth along the line of sight
export const FIRE = 1 // glow of burning gas, 0 to 1
export const GRAIN_X = 2 // where in the opening it left, times optical depth, in grains
export const GRAIN_Y = 3 // and how much had left before it
export const FIELDS = 4

/** What one coarse cell of smoke holds, in this order. */
export const MASS = 0 // optical depth, as a weight for what follows
export const LIGHT = 1 // lightness times optical depth
export const TINT = 2 // tint times optical depth
export const STEAM = 3 // the part of it that evaporates
export const HEAT = 4 // (T - T outside) / T: what makes it rise
export const KINDS = 5

/** Smoke in front of the building, or behind it. */
export interface Smoke {
  /** The fine cells, and the coarse. */
  now: Float32Array
  next: Float32Array
  kind: Float32Array
  kindNext: Float32Array
  /** Coarse cells that hold anything, and those with such a neighbour. */
  busy: Uint8Array
  near: Uint8Array
  /** Whether there is any, and the topmost coarse row that holds some; that below the picture where there is none. */
  any: boolean
  top: number
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
  /** Share of a rise that an eave holds back here, 0 to 1. */
  held: Float32Array
  /** Scratch: divergence, curl. */
  scratch: Float32Array
  front: Smoke
  back: Smoke
  /** Wind along the plane, m/s; u and v are relative to it. */
  windU: number
  /** Share of a flame that burns out on each metre of its way, 1/m. */
  burnsOut: number
}

export function makeGrid(nx: number, ny: number, cellM: number): Grid {
  const row = nx + 2
  const coarse = () => new Float32Array(row * (ny + 2))
  return {
    nx, ny, cellM, row, fineRow: 2 * nx + 2,
    u: coarse(), v: coarse(), uNext: coarse(), vNext: coarse(), rough: coarse(), roughNext: coarse(),
    pressure: coarse(), spread: coarse(), mixing: coarse(), held: coarse(), scratch: coarse(),
    front: makeSmoke(nx, ny), back: makeSmoke(nx, ny), windU: 0, burnsOut: 0,
  }
}

function makeSmoke(nx: number, ny: number): Smoke {
  const fine = (2 * nx + 2) * (2 * ny + 2) * FIELDS
  const coarse = (nx + 2) * (ny + 2)
  return {
    now: new Float32Array(fine), next: new Float32Array(fine),
    kind: new Float32Array(coarse * KINDS), kindNext: new Float32Array(coarse * KINDS),
    busy: new Uint8Array(coarse), near: new Uint8Array(coarse), any: false, top: ny + 1,
  }
}

/** Marks the coarse cells that smoke may be in or next to. */
export function findNear({ nx, ny, row }: Grid, smoke: Smoke): void {
  const { busy, near } = smoke
  near.fill(0)
  smoke.top = ny + 1
  for (let j = 1; j <= ny; j++) {
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      if (busy[c] === 0) continue
      if (smoke.top > j) smoke.top = j
      near[c - row - 1] = near[c - row] = near[c - row + 1] = 1
      near[c - 1] = near[c] = near[c + 1] = 1
      near[c + row - 1] = near[c + row] = near[c + row + 1] = 1
    }
  }
  smoke.any = smoke.top <= ny
}
