import { Noise } from '../noise'
import { carryAir } from './air'
import type { Fading } from './fading'
import { buoyancy, churn, mixAir, type Breadth } from './force'
import { holdBack } from './hold'
import { project } from './project'
import { carrySmoke } from './smoke'
import type { Grid } from './grid'

/** Length of one step of the picture, s. Never another: frames must not depend on the screen. */
export const STEP_S = 1 / 30

/** One step of air and smoke; the jets have been stamped in already. */
export function stepFluid(grid: Grid, fading: Fading, noise: Noise, breadth: Breadth): void {
  buoyancy(grid, STEP_S)
  mixAir(grid, breadth)
  churn(grid, noise, breadth, STEP_S)
  holdBack(grid)
  project(grid)
  holdBack(grid)
  carryAir(grid, fading, STEP_S)
  carrySmoke(grid, grid.front, fading, STEP_S)
  carrySmoke(grid, grid.back, fading, STEP_S)
}
