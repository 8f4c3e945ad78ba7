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
  const area = openArea(view, place, open)
  if (facing === 'up' || facing === 'over') area.y0 = corners(view, place)[0].y - 2 * cellM
  if (facing === 'left') {
    area.x1 = view.leftM
    area.x0 = area.x1 - 2 * cellM
  }
  if (facing === 'right') area.x1 = Math.max(area.x1, area.x0 + 2 * cellM)
  return area
}

/** Height of the neutral plane on the picture: at the bottom where all flows out, at the top where all flows in. */
function planeOf(view: View, place: Place, look: OpeningLook): number {
  const { y0, y1 } = openArea(view, place, 1)
  const none = look.flow === 1 ? 1 : 0
  const share = Number.isFinite(look.neutralPlane) ? Math.max(0, Math.min(1, look.neutralPlane)) : none
  return y1 - share * (y1 - y0)
}
