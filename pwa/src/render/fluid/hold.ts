import type { Grid } from './grid'

/** Notes an eave in the air: the row of cells at height y, from x0 to x1, holds back this share of any rise. */
export function putHold({ cellM, nx, ny, row, held }: Grid, { x0, x1, y }: { x0: number; x1: number; y: number }, share: number): void {
  const j = Math.floor(y / cellM) + 1
  if (share <= 0 || j < 2 || j > ny) return
  const i0 = Math.max(1, Math.floor(x0 / cellM) + 1)
  const i1 = Math.min(nx, Math.floor(x1 / cellM))
  for (let i = i0; i <= i1; i++) {
    held[j * row + i] = Math.max(held[j * row + i]!, share)
    held[(j - 1) * row + i] = Math.max(held[(j - 1) * row + i]!, 0.5 * share)
  }
}

// An eave brakes what rises under it, by this share at most each time that it is
// asked: warm smoke still finds its way round the edge at about the speed that it
// would have risen with, where a lid would let it creep. Chosen by us, by eye.
const BRAKES = 0.17

/** Holds rising air back where an eave is. */
export function holdBack({ nx, ny, row, v, held }: Grid): void {
  for (let j = 1; j <= ny; j++) {
    for (let c = j * row + 1; c <= j * row + nx; c++) {
      if (held[c]! > 0 && v[c]! < 0) v[c]! *= 1 - BRAKES * held[c]!
    }
  }
}
