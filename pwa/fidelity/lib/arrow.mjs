// Reads the arrow that stands for speed where motion is reduced: beside the
// opening, as long as the smoke goes in the time that the scene's words name.
import { readFileSync } from 'node:fs'
import { decode } from 'fast-png'

/** The words of the scene: "a quarter of a second" (pwa/src/words/en). */
const STANDS_FOR_S = 0.25
// An arrow is a dark line with a rim on both sides that is paler than wall and trim:
// the edge of a door's frame is as dark, and longer than a slow arrow. It stands
// nine points beside the opening. In pixels of a screen with two to a point. Chosen
// by us.
const DARK = 90
const PALE = 230
const RIM = 5
const SEARCHED = { from: 13, to: 25 }
/** The pen is this broad, and its round ends reach past both ends of the line. */
const PEN = 3

/** Speed in m/s that the arrow right of an opening shows; NaN where there is none. */
export function arrowSpeed(path, opening, metresPerPixel) {
  const { data, width, height, channels } = decode(readFileSync(path))
  const grey = (x, y) => {
    const at = channels * (y * width + x)
    return (data[at] + data[at + 1] + data[at + 2]) / 3
  }
  const line = (x, y) => grey(x, y) < DARK && paleBeside(grey, x, y, -1) && paleBeside(grey, x, y, 1)
  let best = { x: 0, y: 0, run: 0 }
  for (let x = Math.round(opening.x1) + SEARCHED.from; x <= Math.min(width - RIM - 1, opening.x1 + SEARCHED.to); x++) {
    let run = 0
    for (let y = 0; y < Math.min(height, Math.round(opening.y1) + RIM); y++) {
      run = line(x, y) ? run + 1 : 0
      if (run > best.run) best = { x, y, run }
    }
  }
  if (best.run === 0) return Number.NaN
  // Head and foot are broader than the shaft and have no pale rim beside it; the pale rim beyond their ends stops the line.
  let top = best.y - best.run + 1
  let bottom = best.y
  while (top > 0 && grey(best.x, top - 1) < DARK) top--
  while (bottom < height - 1 && grey(best.x, bottom + 1) < DARK) bottom++
  return ((bottom - top + 1 - PEN) * metresPerPixel) / STANDS_FOR_S
}

function paleBeside(grey, x, y, way) {
  for (let d = 1; d <= RIM; d++) if (grey(x + way * d, y) > PALE) return true
  return false
}
