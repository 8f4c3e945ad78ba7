import type { Place } from './layout'
import { corners, turn, type View } from './view'

// Coming nearer: the part of the picture that fills the canvas. A section is shown
// as large as it fits, and any scene can be framed on one opening.

/** The picture's point in the upper left corner of the canvas, in metres, and how much larger all is drawn. */
export interface Zoom { x: number; y: number; scale: number }

export const WHOLE: Zoom = { x: 0, y: 0, scale: 1 }

/** Narrower than this, in screen pixels, a section takes all the height there is and writes fewer figures. */
export const NARROW = 500

export interface Near { cutaway: boolean; narrow: boolean; place: Place | undefined }

/** What to frame. */
export function zoomFor(view: View, { cutaway, narrow, place }: Near): Zoom {
  if (cutaway) return onSection(view, narrow ? TALL : BELOW_ROOF)
  return place ? onOpening(view, place) : WHOLE
}

// Shares of the canvas that a section takes, and limits of coming nearer: the
// smoke's own cells show beyond. Chosen by us, by eye.
const WIDE = 0.94
const TALL = 0.86
const BELOW_ROOF = 0.74 // where there is room, what is above the section stays in sight
const NEAREST = 2.4
const SECTION_DOWN = 0.54 // a little below the middle: the clock has the corner above

function onSection(view: View, tall: number): Zoom {
  const { layout } = view
  const a = turn(view, layout.x0, layout.y0)
  const b = turn(view, layout.x1, layout.y1)
  const along = Math.abs(b.along - a.along)
  const scale = within(Math.min((WIDE * view.widthM) / along, (tall * view.heightM) / layout.top), 1, NEAREST)
  return framed(view, view.leftM + along / 2, view.groundM - layout.top / 2, scale, SECTION_DOWN)
}

/** An opening takes up to three fifths of the height, with room for its smoke above. */
function onOpening(view: View, place: Place): Zoom {
  const points = corners(view, place)
  const [xs, ys] = [points.map(({ x }) => x), points.map(({ y }) => y)]
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const size = Math.max(y1 - y0, x1 - x0)
  const scale = within(Math.min(view.heightM, view.widthM) / (1.6 * size), 1, NEAREST)
  return framed(view, (x0 + x1) / 2, (y0 + y1) / 2, scale, 0.62)
}

/** The zoom that puts a point in the middle, at a share of the height from the top, and shows nothing past the picture. */
function framed({ widthM, heightM }: View, x: number, y: number, scale: number, down: number): Zoom {
  return {
    scale,
    x: within(x - widthM / scale / 2, 0, widthM - widthM / scale),
    y: within(y - (down * heightM) / scale, 0, heightM - heightM / scale),
  }
}

const SETTLES_PER_S = 7 // chosen by us: there in about half a second

/** Moves one zoom toward another; `at` once it is as good as there. */
export function toward(from: Zoom, at: Zoom, seconds: number): Zoom {
  const share = Math.min(1, SETTLES_PER_S * seconds)
  if (Math.abs(at.scale - from.scale) + Math.abs(at.x - from.x) + Math.abs(at.y - from.y) < 0.002) return at
  const mix = (a: number, b: number) => a + share * (b - a)
  return { x: mix(from.x, at.x), y: mix(from.y, at.y), scale: mix(from.scale, at.scale) }
}

const within = (x: number, lo: number, hi: number) => Math.max(lo, Math.min(hi, x))
