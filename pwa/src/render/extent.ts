/** A part of a picture, in its cells. */
export interface Extent { x: number; y: number; across: number; down: number }

/**
 * Clear cells that are kept around what shows, so that stretching reads past its
 * edge what is really there: a curve through four cells reaches two of them, and
 * the third is clear also after it.
 */
const MARGIN = 3

/** Finds the part of a picture that holds all that shows, with a clear margin. Returns whether anything does. */
export function extentOf(values: Uint32Array, columns: number, rows: number, extent: Extent): boolean {
  let top = 0
  const end = columns * rows
  while (top < end && values[top] === 0) top++
  if (top === end) return false
  let bottom = end - 1
  while (values[bottom] === 0) bottom--
  const first = Math.floor(top / columns)
  const last = Math.floor(bottom / columns)
  let left = columns
  let right = -1
  for (let y = first; y <= last; y++) {
    const row = y * columns
    let x = 0
    while (x < left && values[row + x] === 0) x++
    left = x
    x = columns - 1
    while (x > right && values[row + x] === 0) x--
    right = x
  }
  extent.x = Math.max(0, left - MARGIN)
  extent.y = Math.max(0, first - MARGIN)
  extent.across = Math.min(columns, right + 1 + MARGIN) - extent.x
  extent.down = Math.min(rows, last + 1 + MARGIN) - extent.y
  return true
}
