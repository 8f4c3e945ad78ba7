import { FIELDS, findNear, FIRE, KINDS, TAU, type Grid, type Smoke } from './grid'
import { FAINT } from './smoke'

// Air and smoke taken over onto a grid of other cells over the same picture, so
// that smoke drawn coarser, or finer, goes on from where it was.

/** Fills a grid from another. */
export function resample(from: Grid, to: Grid): void {
  for (const name of ['u', 'v', 'rough', 'pressure'] as const) sample(from[name], to[name], coarse(from), coarse(to), 1)
  resampleSmoke(from, to, from.front, to.front)
  resampleSmoke(from, to, from.back, to.back)
}

/** Rows and columns without the border, and the breadth of a cell. */
interface Cells { nx: number; ny: number; cellM: number }

const coarse = ({ nx, ny, cellM }: Grid): Cells => ({ nx, ny, cellM })
export const fine = ({ nx, ny, cellM }: Grid): Cells => ({ nx: 2 * nx, ny: 2 * ny, cellM: cellM / 2 })

function resampleSmoke(from: Grid, to: Grid, old: Smoke, smoke: Smoke): void {
  smoke.any = false
  smoke.top = to.ny + 1
  if (!old.any) return
  sample(old.now, smoke.now, fine(from), fine(to), FIELDS)
  sample(old.kind, smoke.kind, coarse(from), coarse(to), KINDS)
  for (let j = 1; j <= to.ny; j++) {
    for (let i = 1; i <= to.nx; i++) smoke.busy[j * to.row + i] = holdsAny(to, smoke.now, i, j) ? 1 : 0
  }
  findNear(to, smoke)
}

/** Clears what is faint, as carrying does, and says whether any of four fine cells is left. */
function holdsAny({ fineRow }: Grid, now: Float32Array, i: number, j: number): boolean {
  let any = false
  for (let k = 0; k < 4; k++) {
    const o = ((2 * j - 1 + (k >> 1)) * fineRow + 2 * i - 1 + (k & 1)) * FIELDS
    if (now[o + TAU]! < FAINT && now[o + FIRE]! < FAINT) now.fill(0, o, o + FIELDS)
    else any = true
  }
  return any
}

/** Reads an array of some values a cell between the middles of its cells, as many as there are, at the middles of others. */
export function sample(from: Float32Array, to: Float32Array, old: Cells, cells: Cells, values: number): void {
  const oldRow = (old.nx + 2) * values
  const ratio = cells.cellM / old.cellM
  for (let j = 1; j <= cells.ny; j++) {
    const y = between(j, ratio, old.ny)
    const y0 = Math.floor(y)
    const fy = y - y0
    for (let i = 1; i <= cells.nx; i++) {
      const x = between(i, ratio, old.nx)
      const x0 = Math.floor(x)
      const fx = x - x0
      const p = y0 * oldRow + x0 * values
      const o = (j * (cells.nx + 2) + i) * values
      for (let k = 0; k < values; k++) {
        const above = from[p + k]! + fx * (from[p + values + k]! - from[p + k]!)
        const below = from[p + oldRow + k]! + fx * (from[p + oldRow + values + k]! - from[p + oldRow + k]!)
        to[o + k] = above + fy * (below - above)
      }
    }
  }
}

/** The place of a cell's middle among the old cells, never past the middle of the outermost. */
const between = (cell: number, ratio: number, last: number) => Math.max(1, Math.min(last, (cell - 0.5) * ratio + 0.5))
