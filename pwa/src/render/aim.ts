import type { OpeningLook } from './frame'
import { churnOf, leakShare, type Facing, type Jet, type Rect } from './jet'
import type { Place } from './layout'
import { corners, openArea, type View } from './view'

/** An opening in sight or behind, what it shows, and the jet that this makes on the picture, which is filled anew at every step. */
export interface Aimed {
  place: Place
  facing: Facing
  look: OpeningLook
  /** All of the opening on the picture; of a hole in a roof the upright band in which its gas appears. */
  whole: Rect
  jet: Jet
}

/** Makes ready for an opening that faces some way. */
export function aimAt(view: View, place: Place, facing: Facing, look: OpeningLook, cellM: number, outsideC: number): Aimed {
  const whole = facing === 'up' || facing === 'over' ? mouthOf(view, place, cellM) : openArea(view, place, 1)
  const jet: Jet = { area: { ...whole }, facing, plane: whole.y1, look, churn: 0, depth: 0, share: 1, outsideC, seed: place.index + 1 }
  return { place, facing, look, whole, jet }
}

/** Below this share of opening a panel counts as shut, and what passes it as a leak. Chosen by us. */
const SHUT = 0.02

/** Turns what an opening shows now into its jet on the picture. */
export function aim(view: View, { place, facing, look, whole, jet }: Aimed, cellM: number): Jet {
  const shut = look.open < SHUT
  fit(jet.area, view, facing, whole, shut ? 1 : look.open, cellM)
  if (shut) jet.area.y1 = jet.area.y0 + cellM // a shut panel leaks along its upper edge
  jet.share = shut ? leakShare(look, jet.area.x1 - jet.area.x0) : 1
  jet.plane = shut || place.z0 === place.z1 ? jet.area.y1 : planeOf(whole, look)
  jet.depth = look.opticalDepth * jet.share
  jet.churn = churnOf(look)
  return jet
}

/** Where on the picture an opening's gas appears: the part that stands open, hinged on its left, or just outside the edge that hides it. */
function fit(area: Rect, view: View, facing: Facing, whole: Rect, open: number, cellM: number): void {
  area.x1 = whole.x1
  area.x0 = whole.x1 - Math.max(0, Math.min(1, open)) * (whole.x1 - whole.x0)
  area.y0 = whole.y0
  area.y1 = whole.y1
  if (facing === 'eye') widen(area, cellM)
  if (facing === 'left') {
    area.x1 = view.leftM
    area.x0 = area.x1 - 2 * cellM
  }
  if (facing === 'right') area.x1 = Math.max(area.x1, area.x0 + 2 * cellM)
}

/** What is narrower than a fine cell is drawn as broad as one, or it could not be drawn at all. */
function widen(area: Rect, cellM: number): void {
  const lacks = 0.5 * (0.9 * cellM - (area.x1 - area.x0))
  if (lacks <= 0) return
  area.x0 -= lacks
  area.x1 += lacks
}

/** The mouth of a hole in a roof: an upright band, most of it above its middle, as broad as the hole and at least three cells high. */
function mouthOf(view: View, place: Place, cellM: number): Rect {
  const [tl, tr, br, bl] = corners(view, place)
  const middle = (tl.y + tr.y + br.y + bl.y) / 4
  const half = Math.max(1.5 * cellM, (Math.max(bl.y, br.y) - Math.min(tl.y, tr.y)) / 2)
  return { x0: (tl.x + bl.x) / 2, x1: (tr.x + br.x) / 2, y0: middle - 1.6 * half, y1: middle + 0.4 * half }
}

/** Height of the neutral plane on the picture: at the bottom where all flows out, at the top where all flows in. */
function planeOf({ y0, y1 }: Rect, look: OpeningLook): number {
  const none = look.flow === 1 ? 1 : 0
  const share = Number.isFinite(look.neutralPlane) ? Math.max(0, Math.min(1, look.neutralPlane)) : none
  return y1 - share * (y1 - y0)
}
