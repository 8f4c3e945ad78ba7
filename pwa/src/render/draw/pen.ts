import type { Point } from '../view'

/** A canvas that is drawn on in metres, with line widths in screen pixels. */
export interface Pen { ctx: Canvas; pixel: number }

/** What both a canvas on the page and one off it can do. */
export type Canvas = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D

/** A canvas on the page, or one off it. */
export type Sheet = HTMLCanvasElement | OffscreenCanvas

export const penOf = (sheet: Sheet): Canvas => (sheet as OffscreenCanvas).getContext('2d')!

export function outline({ ctx }: Pen, points: readonly Point[]): void {
  ctx.beginPath()
  points.forEach((p, k) => (k === 0 ? ctx.moveTo(p.x, p.y) : ctx.lineTo(p.x, p.y)))
  ctx.closePath()
}

export function fill(pen: Pen, points: readonly Point[], colour: string | CanvasGradient): void {
  outline(pen, points)
  pen.ctx.fillStyle = colour
  pen.ctx.fill()
}

export function stroke(pen: Pen, points: readonly Point[], colour: string, pixels = 1): void {
  outline(pen, points)
  pen.ctx.strokeStyle = colour
  pen.ctx.lineWidth = pixels * pen.pixel
  pen.ctx.stroke()
}

export function line({ ctx, pixel }: Pen, from: Point, to: Point, colour: string, pixels = 1): void {
  ctx.beginPath()
  ctx.moveTo(from.x, from.y)
  ctx.lineTo(to.x, to.y)
  ctx.strokeStyle = colour
  ctx.lineWidth = pixels * pixel
  ctx.stroke()
}

/** The point a share of the way from one to another. */
export const between = (a: Point, b: Point, share: number): Point =>
  ({ x: a.x + share * (b.x - a.x), y: a.y + share * (b.y - a.y) })
