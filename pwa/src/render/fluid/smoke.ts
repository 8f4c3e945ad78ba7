import type { Fading } from './fading'
import { FIELDS, findNear, FIRE, GRAIN_X, GRAIN_Y, HEAT, KINDS, LIGHT, MASS, STEAM, TAU, TINT, type Grid, type Smoke } from './grid'

// Below this optical depth a cell counts as clear. In a step slow smoke moves on
// by a few hundredths of a cell, and so gives the next no more than that share of
// its own depth: were it cut off higher, thin and slow smoke would stand still at
// an edge. Chosen by us.
export const FAINT = 0.002

// What the functions below hand each other for the cell at work: in an array, as
// numbers that go from function to function by themselves become garbage.
const carried = new Float64Array(7)
const X = 0 // where its gas was, in coarse cells
const Y = 1
const FRESH = 2 // share of it that is not air mixed in
const KEPT = 3 // shares of its optical depth and of its flame that are left
const BURNT = 4
const DT = 5
const CELLS = 6 // coarse cells that one metre a second makes in a step

/**
 * Carries smoke by the air: each cell takes what stood where its gas was a step
 * ago. Only cells whose gas may hold smoke are looked at, so that a clear sky
 * costs next to nothing.
 */
export function carrySmoke(grid: Grid, smoke: Smoke, fading: Fading, dt: number): void {
  const { nx, ny, row, u, v, cellM, windU, mixing } = grid
  const { near, busy, kindNext } = smoke
  findNear(grid, smoke)
  if (!smoke.any) return
  smoke.next.fill(0)
  kindNext.fill(0)
  busy.fill(0)
  const cells = dt / cellM
  carried[DT] = dt
  carried[CELLS] = cells
  for (let j = 1; j <= ny; j++) {
    for (let i = 1; i <= nx; i++) {
      const c = j * row + i
      const x = clamp(i - cells * (u[c]! + windU), nx + 0.99)
      const y = clamp(j - cells * v[c]!, ny + 0.99)
      if (near[((y + 0.5) | 0) * row + ((x + 0.5) | 0)] === 0) continue
      carried[X] = x
      carried[Y] = y
      carried[FRESH] = 1 - dt * mixing[c]!
      carryKind(grid, smoke, fading, c)
      burn(grid, fading, c)
      if (carryFine(grid, smoke, c, i, j)) busy[c] = 1
    }
  }
  const { now, kind } = smoke
  smoke.now = smoke.next
  smoke.next = now
  smoke.kind = kindNext
  smoke.kindNext = kind
}

/** Notes the share of a flame that is left after a step: by the way it came, so that it is as long as its heat makes it, however fast it rises. */
function burn({ burnsOut, u, v }: Grid, fading: Fading, c: number): void {
  const dt = carried[DT]!
  const lost = (burnsOut === 0 ? fading.burn : fading.burn + burnsOut * Math.sqrt(u[c]! * u[c]! + v[c]! * v[c]!)) * dt
  carried[BURNT] = lost < 1 ? 1 - lost : 0
}

/** Colour, steam and heat of one coarse cell. Notes the share of its optical depth that is kept. */
function carryKind(grid: Grid, smoke: Smoke, fading: Fading, c: number): void {
  const { kind, kindNext } = smoke
  const x = carried[X]!
  const y = carried[Y]!
  const fresh = carried[FRESH]!
  const dt = carried[DT]!
  const x0 = x | 0
  const y0 = y | 0
  const wd = (x - x0) * (y - y0)
  const wb = x - x0 - wd
  const wc = y - y0 - wd
  const wa = 1 - wb - wc - wd
  const p = (y0 * grid.row + x0) * KINDS
  const q = p + KINDS
  const r = p + grid.row * KINDS
  const s = r + KINDS
  const mass = wa * kind[p]! + wb * kind[q]! + wc * kind[r]! + wd * kind[s]!
  const steam = wa * kind[p + STEAM]! + wb * kind[q + STEAM]! + wc * kind[r + STEAM]! + wd * kind[s + STEAM]!
  const dried = mass > FAINT ? 1 - (steam * fading.dry * dt) / mass : 1
  const kept = fresh * (1 - fading.thin * dt) * (dried < 0 ? 0 : dried)
  const o = c * KINDS
  kindNext[o + MASS] = kept * mass
  kindNext[o + LIGHT] = kept * (wa * kind[p + LIGHT]! + wb * kind[q + LIGHT]! + wc * kind[r + LIGHT]! + wd * kind[s + LIGHT]!)
  kindNext[o + TINT] = kept * (wa * kind[p + TINT]! + wb * kind[q + TINT]! + wc * kind[r + TINT]! + wd * kind[s + TINT]!)
  kindNext[o + STEAM] = fresh * (1 - fading.dry * dt) * (1 - fading.thin * dt) * steam
  const cooled = fresh * fresh * (1 - fading.cool * dt)
  kindNext[o + HEAT] = cooled * (wa * kind[p + HEAT]! + wb * kind[q + HEAT]! + wc * kind[r + HEAT]! + wd * kind[s + HEAT]!)
  carried[KEPT] = kept
}

/** The four fine cells of one coarse cell. Returns whether anything is in them. */
function carryFine(
  { nx, ny, row, fineRow, u, v, windU }: Grid, { now, next }: Smoke,
  c: number, i: number, j: number,
): boolean {
  const kept = carried[KEPT]!
  const burnt = carried[BURNT]!
  const cells = carried[CELLS]!
  const right = 2 * nx + 0.99
  const bottom = 2 * ny + 0.99
  // Velocity as a slope within the cell, a quarter of a cell from its middle; in fine cells.
  const mx = 2 * cells * (u[c]! + windU)
  const my = 2 * cells * v[c]!
  const quarter = 0.25 * cells
  const uAcross = quarter * (u[c + 1]! - u[c - 1]!)
  const uDown = quarter * (u[c + row]! - u[c - row]!)
  const vAcross = quarter * (v[c + 1]! - v[c - 1]!)
  const vDown = quarter * (v[c + row]! - v[c - row]!)
  let any = false
  for (let k = 0; k < 4; k++) {
    const a = k & 1
    const b = k >> 1
    const sa = a + a - 1
    const sb = b + b - 1
    const fi = 2 * i - 1 + a
    const fj = 2 * j - 1 + b
    let x = fi - mx - sa * uAcross - sb * uDown
    let y = fj - my - sa * vAcross - sb * vDown
    x = x < 0 ? 0 : x > right ? right : x
    y = y < 0 ? 0 : y > bottom ? bottom : y
    const x0 = x | 0
    const y0 = y | 0
    const wd = (x - x0) * (y - y0)
    const wb = x - x0 - wd
    const wc = y - y0 - wd
    const wa = 1 - wb - wc - wd
    const p = (y0 * fineRow + x0) * FIELDS
    const q = p + FIELDS
    const r = p + fineRow * FIELDS
    const s = r + FIELDS
    const tau = wa * now[p]! + wb * now[q]! + wc * now[r]! + wd * now[s]!
    const fire = wa * now[p + FIRE]! + wb * now[q + FIRE]! + wc * now[r + FIRE]! + wd * now[s + FIRE]!
    if (tau < FAINT && fire < FAINT) continue
    any = true
    const o = (fj * fineRow + fi) * FIELDS
    next[o + TAU] = kept * tau
    next[o + FIRE] = burnt * fire
    next[o + GRAIN_X] = kept * (wa * now[p + GRAIN_X]! + wb * now[q + GRAIN_X]! + wc * now[r + GRAIN_X]! + wd * now[s + GRAIN_X]!)
    next[o + GRAIN_Y] = kept * (wa * now[p + GRAIN_Y]! + wb * now[q + GRAIN_Y]! + wc * now[r + GRAIN_Y]! + wd * now[s + GRAIN_Y]!)
  }
  return any
}

const clamp = (x: number, hi: number) => (x < 0 ? 0 : x > hi ? hi : x)
