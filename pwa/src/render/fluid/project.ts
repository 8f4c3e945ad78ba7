import type { Grid } from './grid'

// Relaxation sweeps a step and over-relaxation: chosen by us; the pressure of
// the step before is the first guess, so few sweeps are enough to look right.
const SWEEPS = 7
const OVER = 1.6

/**
 * Makes the air flow around itself: finds the pressure that removes every
 * divergence but the spread asked for, and takes its gradient off the velocity.
 * The ground is a wall; the other three edges are open air.
 */
export function project(grid: Grid): void {
  const { nx, ny, row, cellM, u, v, pressure, spread, mixing, scratch } = grid
  const half = 0.5 * cellM
  const square = cellM * cellM
  for (let j = 1; j <= ny; j++) {
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      scratch[c] = half * (u[c + 1]! - u[c - 1]! + v[c + row]! - v[c - row]!) - square * (spread[c]! + mixing[c]!)
    }
  }
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    relax(grid, 0)
    relax(grid, 1)
  }
  const slope = 0.5 / cellM
  for (let j = 1; j <= ny; j++) {
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      u[c]! -= slope * (pressure[c + 1]! - pressure[c - 1]!)
      v[c]! -= slope * (pressure[c + row]! - pressure[c - row]!)
    }
  }
}

/** One half sweep over the cells of one colour of the chessboard. */
function relax({ nx, ny, row, pressure, scratch }: Grid, colour: number): void {
  for (let j = 1; j <= ny; j++) {
    const end = j * row + nx
    for (let c = j * row + 1 + ((j + colour) & 1); c <= end; c += 2) {
      const level = 0.25 * (pressure[c - 1]! + pressure[c + 1]! + pressure[c - row]! + pressure[c + row]! - scratch[c]!)
      pressure[c]! += OVER * (level - pressure[c]!)
    }
  }
  const ground = (ny + 1) * row
  for (let c = ground; c < ground + row; c++) pressure[c] = pressure[c - row]!
}
