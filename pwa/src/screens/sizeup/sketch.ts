import { spoken } from '../../words/names'
import type { Compartment, Opening, OpeningKind, Plan, Scenario, SeenKind, Side } from '../../wire.gen'

// A building as sized up: what is drawn of it, and what is known of its inside.

export interface Sketch {
  name: string
  construction: string | undefined
  /** The compartments are the real ones; else each storey is one unknown inside. */
  insideKnown: boolean
  plan: Plan
}

/** An opening to the outside, as one walks past it. */
export interface Outside {
  id: string
  name: string
  side: Side | undefined // none: in the roof
  floor: number
  kind: SeenKind
  opening: Opening
}

/** Sizes of a sketched building and its openings, for drawing and for judging by: common sizes, chosen by us. */
const storey = { width: 10, depth: 8, height: 2.6 }
const sizes: Record<'door' | 'window' | 'port' | 'leak', { width_m: number; height_m: number; sill_m: number }> = {
  door: { width_m: 0.9, height_m: 2, sill_m: 0 },
  window: { width_m: 1.2, height_m: 1.1, sill_m: 0.9 },
  port: { width_m: 0.5, height_m: 0.4, sill_m: 1.9 },
  leak: { width_m: 0.4, height_m: 0.1, sill_m: 2.3 },
}

/** What may be added to a side of a sketch. */
export type Addable = keyof typeof sizes
export const addable: readonly Addable[] = ['door', 'window', 'port', 'leak']

const sideNames: Record<Side, string> = { A: 'alpha', B: 'bravo', C: 'charlie', D: 'delta' }

export const seenAs: Record<OpeningKind, SeenKind> = {
  door: 'door',
  window: 'window',
  port: 'vent',
  floor_hole: 'hatch',
  ceiling_hatch: 'hatch',
  roof_hatch: 'roof',
  leak: 'crack',
}

/** A space under the roof is named as such in our buildings; it is no storey. */
const underRoof = /attic|void|loft/

/** The floor heights of the storeys, lowest first. */
export function storeysOf(plan: Plan): number[] {
  return floorsOf(plan.compartments.filter(({ id }) => !underRoof.test(id)))
}

/** The floor heights of what lies under the roof. */
export function atticsOf(plan: Plan): number[] {
  return floorsOf(plan.compartments.filter(({ id }) => underRoof.test(id)))
}

function floorsOf(compartments: readonly Compartment[]): number[] {
  return [...new Set(compartments.map((one) => one.floor_m))].toSorted((a, b) => a - b)
}

/** Every opening one can see from outside, side by side clockwise from Alpha, low before high. */
export function outsides(sketch: Sketch): Outside[] {
  const floors = storeysOf(sketch.plan)
  const rooms = new Map(sketch.plan.compartments.map((room) => [room.id, room]))
  return sketch.plan.openings
    .filter((one) => one.to === 'outside' || one.from === 'outside')
    .map((opening) => {
      const room = rooms.get(opening.from === 'outside' ? opening.to : opening.from)
      const side = opening.kind === 'roof_hatch' ? undefined : opening.side
      const floor = floors.indexOf(room?.floor_m ?? 0) + 1 || floors.length // a roof counts with the highest storey
      return { id: opening.id, name: spoken(opening.id), side, floor, kind: seenAs[opening.kind], opening }
    })
}

/** The openings between compartments, which only a known inside has. */
export function insides(sketch: Sketch): Opening[] {
  return sketch.plan.openings.filter((one) => one.to !== 'outside' && one.from !== 'outside')
}

/** The sketch with one opening standing so far open, 0 to 1. */
export function withOpen(sketch: Sketch, id: string, open: number): Sketch {
  const openings = sketch.plan.openings.map((one) => (one.id === id ? { ...one, open } : one))
  return { ...sketch, plan: { ...sketch.plan, openings } }
}

/** A building whose inside is known, taken from a scenario. */
export function fromScenario(scenario: Scenario, name: string): Sketch {
  const { compartments, openings } = structuredClone({ compartments: scenario.compartments, openings: scenario.openings })
  return { name, construction: undefined, insideKnown: true, plan: { compartments, openings } }
}

/** A house to begin a sketch with: a door and a window to the front, the same behind. */
export function newSketch(name: string): Sketch {
  let sketch: Sketch = { name, construction: undefined, insideKnown: false, plan: { compartments: [], openings: [] } }
  sketch = withStoreys(sketch, 1)
  for (const [side, kind] of [['A', 'door'], ['A', 'window'], ['B', 'window'], ['C', 'door'], ['D', 'window']] as const) {
    sketch = withOpening(sketch, side, 1, kind)
  }
  return sketch
}

/** The sketch with so many storeys; openings of storeys taken away go with them. */
export function withStoreys(sketch: Sketch, count: number): Sketch {
  const compartments = Array.from({ length: count }, (_, n) => inside(n))
  const kept = new Set(compartments.map((one) => one.id))
  const openings = sketch.plan.openings
    .map((one) => (one.kind === 'roof_hatch' ? { ...one, from: compartments.at(-1)!.id } : one))
    .filter((one) => kept.has(one.from))
  return { ...sketch, plan: { compartments, openings: spread(openings) } }
}

function inside(n: number): Compartment {
  return {
    id: `inside_${n + 1}`,
    width_m: storey.width,
    depth_m: storey.depth,
    height_m: storey.height,
    floor_m: n * (storey.height + 0.3),
    lining: 'gypsum',
    x_m: 0,
    y_m: 0,
  }
}

export function withOpening(sketch: Sketch, side: Side, floor: number, kind: Addable): Sketch {
  const above = floor > 1 ? `_division_${floor}` : ''
  const id = freeID(sketch, `${sideNames[side]}_${seenAs[kind]}${above}`)
  const opening: Opening = { id, from: `inside_${floor}`, to: 'outside', side, kind, open: 1, ...sizes[kind] }
  return { ...sketch, plan: { ...sketch.plan, openings: spread([...sketch.plan.openings, opening]) } }
}

/** A hole in the roof, over the highest storey. */
export function withRoofOpening(sketch: Sketch): Sketch {
  const top = sketch.plan.compartments.at(-1)!.id
  const id = freeID(sketch, 'roof_opening')
  const opening: Opening = { id, from: top, to: 'outside', kind: 'roof_hatch', area_m2: 1, shape: 'square', open: 1 }
  return { ...sketch, plan: { ...sketch.plan, openings: [...sketch.plan.openings, opening] } }
}

export function withoutOpening(sketch: Sketch, id: string): Sketch {
  return { ...sketch, plan: { ...sketch.plan, openings: spread(sketch.plan.openings.filter((one) => one.id !== id)) } }
}

function freeID(sketch: Sketch, wanted: string): string {
  const taken = new Set(sketch.plan.openings.map((one) => one.id))
  for (let n = 1; ; n++) {
    const id = n === 1 ? wanted : `${wanted}_${n}`
    if (!taken.has(id)) return id
  }
}

/** Openings of one wall and storey stand at equal distances along it. */
function spread(openings: Opening[]): Opening[] {
  return openings.map((one) => {
    if (one.kind === 'roof_hatch') return one
    const wall = openings.filter((other) => other.from === one.from && other.side === one.side)
    const length = one.side === 'A' || one.side === 'C' ? storey.width : storey.depth
    const middle = (length * (wall.indexOf(one) + 1)) / (wall.length + 1)
    return { ...one, at_m: middle - (one.width_m ?? 0) / 2 }
  })
}
