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

type Part = (grid: Grid, fading: Fading, noise: Noise, breadth: Breadth) => void

/** One step of air and smoke, in parts that take about as long; the jets have been stamped in already. */
export const PARTS: readonly Part[] = [
  (grid, _, noise, breadth) => {
    buoyancy(grid, STEP_S)
    mixAir(grid, breadth)
    churn(grid, noise, breadth, STEP_S)
  },
  (grid) => {
    holdBack(grid)
    project(grid)
    holdBack(grid)
  },
  (grid, fading) => carryAir(grid, fading, STEP_S),
  (grid, fading) => carrySmoke(grid, grid.front, fading, STEP_S),
  (grid, fading) => carrySmoke(grid, grid.back, fading, STEP_S),
]
