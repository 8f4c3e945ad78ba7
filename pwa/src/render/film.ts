import type { Canvas } from './draw/pen'

/** Turns an array of smoke pixels into a picture on a canvas, scaled up smoothly. */
export class Film {
  readonly #small: OffscreenCanvas
  readonly #ctx: OffscreenCanvasRenderingContext2D
  readonly #image: ImageData

  constructor(columns: number, rows: number) {
    this.#small = new OffscreenCanvas(columns, rows)
    this.#ctx = this.#small.getContext('2d')!
    this.#image = new ImageData(columns, rows)
  }

  show(ctx: Canvas, pixels: Uint8ClampedArray, width: number, height: number): void {
    this.#image.data.set(pixels)
    this.#ctx.putImageData(this.#image, 0, 0)
    ctx.imageSmoothingEnabled = true
    ctx.imageSmoothingQuality = 'high'
    ctx.drawImage(this.#small, 0, 0, width, height)
  }
}
