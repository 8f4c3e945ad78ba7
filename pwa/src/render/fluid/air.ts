import type { Fading } from './fading'
import type { Grid } from './grid'

/** Carries the air by its own velocity, tracing each cell back to where it came from. */
export function carryAir(grid: Grid, fading: Fading, dt: number): void {
  const { nx, ny, row, u, v, rough, uNext, vNext, roughNext, mixing, cellM, windU } = grid
  const cells = dt / cellM
  const free = 1 - fading.drag * dt
  const clear = 1 - fading.still * dt
  const sideways = 1 - fading.sideways * dt
  for (let j = 1; j <= ny; j++) {
    for (let i = 1; i <= nx; i++) {
      const c = j * row + i
      const x = clamp(i - cells * (u[c]! + windU), 0.5, nx + 0.5)
      const y = clamp(j - cells * v[c]!, 0.5, ny + 0.5)
      const x0 = x | 0
      const y0 = y | 0
      const fx = x - x0
      const fy = y - y0
      const a = y0 * row + x0
      const b = a + row
      const wa = (1 - fx) * (1 - fy)
      const wb = fx * (1 - fy)
      const wc = (1 - fx) * fy
      const wd = fx * fy
      // Air that a plume takes in stands still and has to be set moving.
      const keep = mixing[c]! > 0 ? free * (1 - dt * mixing[c]!) : clear
      uNext[c] = keep * sideways * (wa * u[a]! + wb * u[a + 1]! + wc * u[b]! + wd * u[b + 1]!)
      vNext[c] = keep * (wa * v[a]! + wb * v[a + 1]! + wc * v[b]! + wd * v[b + 1]!)
      roughNext[c] = free * (wa * rough[a]! + wb * rough[a + 1]! + wc * rough[b]! + wd * rough[b + 1]!)
    }
  }
  smooth(grid)
  ;[grid.rough, grid.roughNext] = [roughNext, rough]
}

/** Viscosity where the gas does not churn: an orderly stream keeps smooth edges. Writes u and v. */
function smooth({ nx, ny, row, u, v, uNext, vNext, roughNext }: Grid): void {
  for (let j = 1; j <= ny; j++) {
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      const mix = 0.05 * (1 - Math.min(1, 3 * roughNext[c]!))
      const keep = 1 - 4 * mix
      u[c] = keep * uNext[c]! + mix * (uNext[c - 1]! + uNext[c + 1]! + uNext[c - row]! + uNext[c + row]!)
      v[c] = keep * vNext[c]! + mix * (vNext[c - 1]! + vNext[c + 1]! + vNext[c - row]! + vNext[c + row]!)
    }
  }
  const ground = (ny + 1) * row
  for (let c = ground; c < ground + row; c++) {
    u[c] = u[c - row]!
    v[c] = -v[c - row]!
  }
}

const clamp = (x: number, lo: number, hi: number) => (x < lo ? lo : x > hi ? hi : x)
