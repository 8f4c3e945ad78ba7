import type { Side } from '../wire.gen'
import type { Facing, Rect } from './jet'
import type { Box, Layout, Place } from './layout'

// How the building is seen: one side as a true elevation, with the wall on its
// right and the roof receding to the upper right. A point is (along the wall,
// up, depth behind the wall), in metres.

/** Shift on the picture of one metre of depth: chosen by us, a standing eye a little to the right. */
const RECEDE = { right: 0.26, up: 0.1 } as const

/**
 * A building deeper than this is looked at from farther off, so that its depth
 * takes no more of the picture than this much would, and its openings are drawn
 * the larger. Chosen by us.
 */
const DEEP_M = 6

/** Room for smoke on either side: a share of the building's size, but no more than smoke needs that leaves by a door. Chosen by us. */
const BESIDE = 0.11
const BESIDE_M = 1.2

export interface Point { x: number; y: number }

/** The four corners of something flat, clockwise from its upper left. */
export type Quad = readonly [Point, Point, Point, Point]

export interface View {
  side: Side
  /** Size of the picture in metres. */
  widthM: number
  heightM: number
  /** Picture metres of the ground line and of the left end of the wall. */
  groundM: number
  leftM: number
  layout: Layout
  /** Shift on the picture of one metre of depth. */
  recede: { right: number; up: number }
  /** How many times as far off as one who stands before it. */
  away: number
}

/** From across the road a building looks this much smaller than from before it. Chosen by us. */
export const ACROSS = 2.1

/**
 * Frames a side in a picture of the given shape, with room above and beside for
 * smoke; `away` times as far off, with as much more ground before it.
 */
export function frameView(layout: Layout, side: Side, aspect: number, away = 1): View {
  const along = side === 'A' || side === 'C' ? layout.x1 - layout.x0 : layout.y1 - layout.y0
  const depth = side === 'A' || side === 'C' ? layout.y1 - layout.y0 : layout.x1 - layout.x0
  const off = Math.min(1, DEEP_M / depth)
  const recede = { right: off * RECEDE.right, up: off * RECEDE.up }
  const broad = along + recede.right * depth
  const tall = layout.top + recede.up * depth
  const beside = Math.min(BESIDE_M, BESIDE * Math.max(along, layout.top))
  const heightM = away * Math.max(tall * 1.7, (broad + 2 * beside) / aspect)
  const widthM = heightM * aspect
  return {
    side, widthM, heightM, layout, away, recede,
    groundM: heightM * (away > 1 ? 0.8 : 0.925),
    leftM: (widthM - broad) / 2,
  }
}

/** Along-the-wall and depth coordinates of a point on the plan. */
export function turn(view: Pick<View, 'side' | 'layout'>, x: number, y: number): { along: number; depth: number } {
  const { layout } = view
  switch (view.side) {
    case 'A': return { along: x - layout.x0, depth: y - layout.y0 }
    case 'C': return { along: layout.x1 - x, depth: layout.y1 - y }
    case 'B': return { along: layout.y1 - y, depth: x - layout.x0 }
    case 'D': return { along: y - layout.y0, depth: layout.x1 - x }
  }
}

/** A point of the building on the picture. */
export function project(view: View, along: number, up: number, depth: number): Point {
  return { x: view.leftM + along + view.recede.right * depth, y: view.groundM - up - view.recede.up * depth }
}

/** A box of the building seen from this side. */
export interface Block { box: Box; a0: number; a1: number; d0: number; d1: number; z0: number; z1: number; wallTop: number }

const known = new WeakMap<View, Block[]>()

/** Boxes from the farthest to the nearest, as a painter needs them. */
export function blocks(view: View): Block[] {
  let list = known.get(view)
  if (!list) known.set(view, (list = makeBlocks(view)))
  return list
}

function makeBlocks(view: View): Block[] {
  return view.layout.boxes
    .map((box) => {
      const p = turn(view, box.x0, box.y0)
      const q = turn(view, box.x1, box.y1)
      return {
        box, z0: box.z0, z1: box.z1, wallTop: box.wallTop,
        a0: Math.min(p.along, q.along), a1: Math.max(p.along, q.along),
        d0: Math.min(p.depth, q.depth), d1: Math.max(p.depth, q.depth),
      }
    })
    .toSorted((p, q) => q.d0 - p.d0 || p.z0 - q.z0 || p.a0 - q.a0)
}

/** Which way an opening faces the eye, or undefined for one inside. */
export function facingOf(view: View, place: Place): Facing | undefined {
  if (place.lies === 'roof') return place.pitch === 0 || view.side === 'A' || view.side === 'B' ? 'up' : 'over'
  const order = ['A', 'B', 'C', 'D'] as const
  const seat = order.indexOf(place.lies as Side)
  if (seat < 0) return undefined
  const turned = (seat - order.indexOf(view.side) + 4) % 4
  return (['eye', 'left', 'away', 'right'] as const)[turned]
}

/** The depth at which an opening is drawn in the section: just behind the wall of the compartments it joins. */
export function sectionDepth(view: View, place: Place): number {
  const joined = blocks(view).filter(({ box }) => box.id === place.opening.from || box.id === place.opening.to)
  return Math.min(...joined.map(({ d0 }) => d0))
}

/** The corners of an opening on the picture, clockwise from its upper left; in the section all lie in its plane. */
export function corners(view: View, place: Place, inSection = false): Quad {
  const p = turn(view, place.x0, place.y0)
  const q = turn(view, place.x1, place.y1)
  const [a0, a1] = [Math.min(p.along, q.along), Math.max(p.along, q.along)]
  if (inSection) {
    const d = sectionDepth(view, place)
    return [project(view, a0, place.z1, d), project(view, a1, place.z1, d),
      project(view, a1, place.z0, d), project(view, a0, place.z0, d)]
  }
  const [d0, d1] = [Math.min(p.depth, q.depth), Math.max(p.depth, q.depth)]
  if (place.z0 === place.z1) {
    return lyingCorners(view, place)
  }
  return [project(view, a0, place.z1, d0), project(view, a1, place.z1, d1),
    project(view, a1, place.z0, d1), project(view, a0, place.z0, d0)]
}

/** A level or sloping hole, clockwise from the corner that is highest and leftmost on the picture. */
function lyingCorners(view: View, place: Place): Quad {
  const middle = (place.y0 + place.y1) / 2
  const at = (x: number, y: number) => {
    const { along, depth } = turn(view, x, y)
    return { ...project(view, along, place.z0 + place.pitch * (y - middle), depth), along, depth }
  }
  const four = [at(place.x0, place.y0), at(place.x1, place.y0), at(place.x1, place.y1), at(place.x0, place.y1)]
  const back = four.toSorted((p, q) => q.depth - p.depth)
  const [tl, tr] = back.slice(0, 2).toSorted((p, q) => p.along - q.along)
  const [bl, br] = back.slice(2).toSorted((p, q) => p.along - q.along)
  return [tl!, tr!, br!, bl!]
}

/** The part of an opening that stands open, as a rectangle on the picture: hinged on its left, or slid from it. */
export function openArea(view: View, place: Place, open: number): Rect {
  const points = corners(view, place)
  const xs = points.map((p) => p.x)
  const ys = points.map((p) => p.y)
  const x0 = Math.min(...xs)
  const x1 = Math.max(...xs)
  const share = Math.max(0, Math.min(1, open))
  return { x0: x1 - share * (x1 - x0), x1, y0: Math.min(...ys), y1: Math.max(...ys) }
}
