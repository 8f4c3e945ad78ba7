import type { Grid } from './fluid/grid'
import type { Jet } from './jet'

/** Air drawn in below the neutral plane: a sink on the picture, so that everything near it leans in. */
export function draw(grid: Grid, jet: Jet): void {
  const { area, look, plane } = jet
  if (!(look.inVelocityMS > 0.01)) return
  const { cellM, row, spread } = grid
  const top = Math.max(area.y0, Math.min(plane, area.y1))
  const i0 = Math.max(1, Math.floor(area.x0 / cellM) + 1)
  const i1 = Math.min(grid.nx, Math.max(i0, Math.floor(area.x1 / cellM)))
  const j0 = Math.max(1, Math.floor(top / cellM) + 1)
  const j1 = Math.min(grid.ny, Math.max(j0, Math.floor(area.y1 / cellM)))
  const sink = (0.6 * look.inVelocityMS) / Math.max(cellM, area.x1 - area.x0)
  for (let j = j0; j <= j1; j++) for (let i = i0; i <= i1; i++) spread[j * row + i]! -= sink
}
