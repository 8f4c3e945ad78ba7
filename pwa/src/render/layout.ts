import type { Compartment, Opening, Scenario, Side } from '../wire.gen'

// Where everything stands, in metres: x to the right along side A, y away from
// it, z up. The same numbers that the physics uses; only places that a scenario
// leaves out are chosen here.

export interface Box {
  id: string; x0: number; x1: number; y0: number; y1: number; z0: number; z1: number
  /** Top of its wall as seen from outside: with the floor above it. */
  wallTop: number
  /** The space under a pitched roof; drawn as a gable of the same volume, its ridge along side A. */
  attic: boolean
}

/** What an opening lies in: an outside wall, the roof, or something inside. */
export type Lies = Side | 'roof' | 'wall inside' | 'floor inside'

export interface Place {
  id: string; x0: number; x1: number; y0: number; y1: number; z0: number; z1: number
  opening: Opening; index: number; lies: Lies
  /** Rise of the roof it lies in, per metre away from side A; 0 for anything level. */
  pitch: number
}

export interface Layout { boxes: Box[]; places: Place[]; x0: number; x1: number; y0: number; y1: number; top: number }

const isHorizontal = (o: Opening) => o.kind === 'floor_hole' || o.kind === 'ceiling_hatch' || o.kind === 'roof_hatch'

/** Lays a scenario out. */
export function layOut(scenario: Pick<Scenario, 'compartments' | 'openings'>): Layout {
  const boxes = placeBoxes(scenario.compartments)
  const byID = new Map(boxes.map((box) => [box.id, box]))
  const layout: Layout = {
    boxes, places: [],
    x0: Math.min(...boxes.map((b) => b.x0)), x1: Math.max(...boxes.map((b) => b.x1)),
    y0: Math.min(...boxes.map((b) => b.y0)), y1: Math.max(...boxes.map((b) => b.y1)),
    top: Math.max(...boxes.map((b) => b.z1)),
  }
  scenario.openings.forEach((opening, index) => {
    const from = byID.get(opening.from) ?? byID.get(opening.to)
    if (from) layout.places.push(placeOpening(opening, index, from, byID.get(opening.to)))
  })
  return layout
}

/** Compartments where their scenario puts them; without a place, side by side on their floor. */
function placeBoxes(compartments: Compartment[]): Box[] {
  const next = new Map<number, number>()
  const boxes = compartments.map((c) => {
    const x0 = c.x_m ?? next.get(c.floor_m) ?? 0
    const y0 = c.y_m ?? 0
    next.set(c.floor_m, Math.max(next.get(c.floor_m) ?? 0, x0 + c.width_m))
    return {
      id: c.id, x0, x1: x0 + c.width_m, y0, y1: y0 + c.depth_m, z0: c.floor_m, z1: c.floor_m + c.height_m,
      wallTop: c.floor_m + c.height_m, attic: c.floor_m > 1.5 && /attic|void|loft/.test(c.id),
    }
  })
  for (const box of boxes) box.wallTop = floorAbove(box, boxes)
  return boxes
}

const THICKEST_FLOOR_M = 0.7 // as the engine allows between stacked rooms

function floorAbove(box: Box, boxes: Box[]): number {
  const above = boxes.filter((o) => o.z0 >= box.z1 && o.z0 - box.z1 < THICKEST_FLOOR_M && o.x0 < box.x1 && o.x1 > box.x0 && o.y0 < box.y1 && o.y1 > box.y0)
  return Math.max(box.z1, ...above.map((o) => o.z0))
}

function placeOpening(opening: Opening, index: number, from: Box, to: Box | undefined): Place {
  return isHorizontal(opening) ? placeHatch(opening, index, from, to) : placeWallOpening(opening, index, from, to)
}

/** A hole lies in the middle of what the two compartments share, in the floor of the upper one. */
function placeHatch(opening: Opening, index: number, from: Box, to: Box | undefined): Place {
  const x0 = Math.max(from.x0, to?.x0 ?? from.x0)
  const x1 = Math.min(from.x1, to?.x1 ?? from.x1)
  const y0 = Math.max(from.y0, to?.y0 ?? from.y0)
  const y1 = Math.min(from.y1, to?.y1 ?? from.y1)
  const wide = Math.sqrt(opening.area_m2 ?? 0.01)
  const x = opening.at_m === undefined ? (x0 + x1 - wide) / 2 : from.x0 + opening.at_m
  const sloped = !to && from.attic
  // On a pitched roof it lies half-way up the slope toward side A, where the roof is as high as its mean.
  const y = sloped ? y0 + (y1 - y0) / 4 - wide / 2 : (y0 + y1 - wide) / 2
  const z = to && to.z0 < from.z0 ? from.z0 : from.z1
  return {
    opening, index, id: opening.id, lies: to ? 'floor inside' : 'roof',
    x0: x, x1: x + wide, y0: y, y1: y + wide, z0: z, z1: z,
    pitch: sloped ? (4 * (from.z1 - from.z0)) / (y1 - y0) : 0,
  }
}

function placeWallOpening(opening: Opening, index: number, from: Box, to: Box | undefined): Place {
  const side = to ? sharedWall(from, to) : (opening.side ?? 'A')
  const width = opening.width_m ?? Math.sqrt(opening.area_m2 ?? 0.01)
  const height = opening.height_m ?? Math.sqrt(opening.area_m2 ?? 0.01)
  const z0 = from.z0 + (opening.sill_m ?? 0)
  const along = side === 'A' || side === 'C'
  const lo = along ? Math.max(from.x0, to?.x0 ?? from.x0) : Math.max(from.y0, to?.y0 ?? from.y0)
  const hi = along ? Math.min(from.x1, to?.x1 ?? from.x1) : Math.min(from.y1, to?.y1 ?? from.y1)
  const start = opening.at_m === undefined ? (lo + hi - width) / 2 : (along ? from.x0 : from.y0) + opening.at_m
  const wall = side === 'A' ? from.y0 : side === 'C' ? from.y1 : side === 'B' ? from.x0 : from.x1
  return {
    opening, index, id: opening.id, lies: to ? 'wall inside' : side, z0, z1: z0 + height, pitch: 0,
    x0: along ? start : wall, x1: along ? start + width : wall,
    y0: along ? wall : start, y1: along ? wall : start + width,
  }
}

/** The wall of `from` against which `to` stands. */
function sharedWall(from: Box, to: Box): Side {
  const gaps: [Side, number][] = [
    ['D', Math.abs(to.x0 - from.x1)], ['B', Math.abs(from.x0 - to.x1)],
    ['C', Math.abs(to.y0 - from.y1)], ['A', Math.abs(from.y0 - to.y1)],
  ]
  return gaps.reduce((best, gap) => (gap[1] < best[1] ? gap : best))[0]
}
