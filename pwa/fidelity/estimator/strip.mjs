// What the instrument is given: the same moments of one scene photographed over
// black and over white, each as one PNG with its frames below each other. From
// the pair follows, with no other knowledge, how much of the background every
// pixel hides and what colour is added in front of it.
import { readFileSync } from 'node:fs'
import { decode } from 'fast-png'

/** Where the frames come from and what is known of the scene: nothing of its state. */
/**
 * @typedef {object} Sighting
 * @property {string} black path of the strip over black
 * @property {string} white path of the strip over white
 * @property {number} frames how many frames a strip holds
 * @property {number} secondsBetween seconds from one frame to the next
 * @property {number} metresPerPixel scale of the picture
 * @property {{x0: number, y0: number, x1: number, y1: number}} opening the opening on a frame, in pixels
 */

/** Reads both strips of a sighting into planes: one Float32Array per frame and quantity. */
export function readSighting({ black, white, frames }) {
  const dark = decode(readFileSync(black))
  const pale = decode(readFileSync(white))
  const width = dark.width
  const height = dark.height / frames
  if (pale.width !== width || pale.height !== dark.height || !Number.isInteger(height) || dark.depth !== 8 || pale.depth !== 8) {
    throw new Error(`${black}: the two strips differ in size, or are no 8 bit strips of ${frames} frames; make them alike`)
  }
  return { width, height, frames: Array.from({ length: frames }, (_, k) => unmix(dark, pale, k * height, width, height)) }
}

/**
 * Over black a pixel shows a·C, over white a·C + (1 - a)·255, for smoke that
 * hides the share a and has the colour C; so a = 1 - (white - black)/255.
 * `added` keeps a·C, which is what the pixel shows over black.
 */
function unmix(dark, pale, top, width, height) {
  const size = width * height
  const plane = () => new Float32Array(size)
  const frame = { hidden: plane(), red: plane(), green: plane(), blue: plane(), overBlack: plane(), overWhite: plane() }
  for (let p = 0; p < size; p++) {
    const d = (top * width + p) * dark.channels
    const w = (top * width + p) * pale.channels
    const overBlack = (dark.data[d] + dark.data[d + 1] + dark.data[d + 2]) / 3
    const overWhite = (pale.data[w] + pale.data[w + 1] + pale.data[w + 2]) / 3
    frame.red[p] = dark.data[d]
    frame.green[p] = dark.data[d + 1]
    frame.blue[p] = dark.data[d + 2]
    frame.overBlack[p] = overBlack
    frame.overWhite[p] = overWhite
    frame.hidden[p] = Math.max(0, Math.min(1, 1 - (overWhite - overBlack) / 255))
  }
  return frame
}
