import type { OpeningLook } from './frame'
import { churnOf, leakShare, type Facing, type Jet, type Rect } from './jet'
import type { Place } from './layout'
import { corners, openArea, type View } from './view'

/** An opening, the way it faces, and what it shows. */
export interface Aimed { place: Place; facing: Facing; look: OpeningLook }

/** Below this share of opening a panel counts as shut, and what passes it as a leak. Chosen by us. */
const SHUT = 0.02

/** Turns what an opening shows into a jet on the picture. */
export function aim(view: View, { place, facing, look }: Aimed, cellM: number, outsideC: number): Jet {
  const shut = look.open < SHUT
  const area = areaOf(view, place, facing, shut ? 1 : look.open, cellM)
  if (shut) area.y1 = area.y0 + cellM // a shut panel leaks along its upper edge
  const share = shut ? leakShare(look, area.x1 - area.x0) : 1
  const level = shut || place.z0 === place.z1
  return {
    area, facing, look, share, outsideC,
    plane: level ? area.y1 : planeOf(view, place, look),
    depth: look.opticalDepth * share,
    churn: churnOf(look),
    seed: place.index + 1,
  }
}

/** Where on the picture an opening's gas appears: its own area, or just outside the edge that hides it. */
function areaOf(view: View, place: Place, facing: Facing, open: number, cellM: number): Rect {
  if (facing === 'up' || facing === 'over') return mouthOf(view, place, open, cellM)
  const area = openArea(view, place, open)
  if (facing === 'left') {
    area.x1 = view.leftM
    area.x0 = area.x1 - 2 * cellM
  }
  if (facing === 'right') area.x1 = Math.max(area.x1, area.x0 + 2 * cellM)
  return area
}

/** The mouth of a hole in a roof: an upright band, most of it above its middle, as broad as the hole and at least three cells high. */
function mouthOf(view: View, place: Place, open: number, cellM: number): Rect {
  const [tl, tr, br, bl] = corners(view, place)
  const x1 = (tr.x + br.x) / 2
  const middle = (tl.y + tr.y + br.y + bl.y) / 4
  const half = Math.max(1.5 * cellM, (Math.max(bl.y, br.y) - Math.min(tl.y, tr.y)) / 2)
  return { x0: x1 - open * (x1 - (tl.x + bl.x) / 2), x1, y0: middle - 1.6 * half, y1: middle + 0.4 * half }
}

/** Height of the neutral plane on the picture: at the bottom where all flows out, at the top where all flows in. */
function planeOf(view: View, place: Place, look: OpeningLook): number {
  const { y0, y1 } = openArea(view, place, 1)
  const none = look.flow === 1 ? 1 : 0
  const share = Number.isFinite(look.neutralPlane) ? Math.max(0, Math.min(1, look.neutralPlane)) : none
  return y1 - share * (y1 - y0)
}
