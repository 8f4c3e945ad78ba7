import type { Canvas } from './draw/pen'

/** How many times finer the smoke is laid before it is stretched over the picture. Chosen by us, by eye. */
const FINER = 2

/**
 * Turns an array of smoke pixels into a picture on a canvas, scaled up smoothly
 * in two stages: a curve through the cells makes them twice as fine, straight
 * lines do the rest. Where no graphics processor draws, the curve over the whole
 * picture takes several times as long, and looks the same.
 */
export class Film {
  readonly #small: Layer
  readonly #smooth: Layer
  readonly #image: ImageData

  constructor(columns: number, rows: number) {
    this.#small = layer(columns, rows)
    this.#smooth = layer(FINER * columns, FINER * rows)
    this.#image = new ImageData(columns, rows)
  }

  show(ctx: Canvas, pixels: Uint8ClampedArray, width: number, height: number): void {
    this.#image.data.set(pixels)
    this.#small.putImageData(this.#image, 0, 0)
    const { width: across, height: down } = this.#smooth.canvas
    const fine = width > across
    if (fine) {
      this.#smooth.clearRect(0, 0, across, down)
      stretch(this.#smooth, this.#small, across, down, 'high')
    }
    stretch(ctx, fine ? this.#smooth : this.#small, width, height, fine ? 'low' : 'high')
  }
}

type Layer = OffscreenCanvasRenderingContext2D

const layer = (columns: number, rows: number): Layer => new OffscreenCanvas(columns, rows).getContext('2d')!

function stretch(onto: Canvas, { canvas }: Layer, width: number, height: number, quality: ImageSmoothingQuality): void {
  onto.imageSmoothingEnabled = true
  onto.imageSmoothingQuality = quality
  onto.drawImage(canvas, 0, 0, width, height)
}
