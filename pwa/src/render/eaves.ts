import { blocks, project, type Block, type View } from './view'

// Where a roof stands out over the wall that is looked at. Smoke that rises
// under it is held back, spreads along it and rolls up over its edge.

/** An attic's eaves stand out by 0.35 m, a flat roof's edge by 0.25 m: common practice (no source). */
export const EAVES_M = 0.35
export const OVERHANG_M = 0.25

/** A building under this height is the small box: boards and screws, no eaves. Chosen by us. */
const BOX_TOP_M = 2.2
export const isSmall = (view: View): boolean => view.layout.top < BOX_TOP_M

/** One eave on the picture: from x0 to x1 at the height y of its lower edge, standing out by outM. */
export interface Eave { x0: number; x1: number; y: number; outM: number }

/** Whether nothing stands on a block: no attic and no further storey. */
export const isBare = (b: Block, all: readonly Block[]): boolean => !b.box.attic &&
  !all.some((o) => o.z0 > b.z0 && Math.abs(o.z0 - b.wallTop) < 0.05 && o.a0 < b.a1 - 0.05 && o.a1 > b.a0 + 0.05)

/** Where the roof ends that begins over a block: bare blocks side by side, as high and as near, carry one. Undefined over one that another's runs on to. */
export function roofEnd(b: Block, all: readonly Block[]): number | undefined {
  const next = (from: Block, a: 'a0' | 'a1') => all.find((o) =>
    o !== from && isBare(o, all) && Math.abs(o[a] - from[a === 'a0' ? 'a1' : 'a0']) < 0.05 && Math.abs(o.wallTop - from.wallTop) < 0.05 && Math.abs(o.d0 - from.d0) < 0.05)
  if (next(b, 'a1')) return undefined
  let last = b
  for (let more = next(b, 'a0'); more; more = next(more, 'a0')) last = more
  return last.a1
}

/** The eaves over the walls that face the eye. A gable has none: its rake runs up along the slope. */
export function eavesOf(view: View): Eave[] {
  if (isSmall(view)) return []
  const all = blocks(view)
  const along = view.side === 'A' || view.side === 'C'
  return all.flatMap((b): Eave[] => {
    if (b.box.attic) return along ? [edge(view, b, b.a1, b.z0, EAVES_M)] : []
    const end = isBare(b, all) ? roofEnd(b, all) : undefined
    return end === undefined ? [] : [edge(view, b, end, b.wallTop, OVERHANG_M)]
  })
}

function edge(view: View, { a0, d0 }: Block, a1: number, z: number, outM: number): Eave {
  const left = project(view, a0 - outM, z, d0 - outM)
  const right = project(view, a1 + outM, z, d0 - outM)
  return { x0: left.x, x1: right.x, y: left.y, outM }
}

// The most of a rise that an eave holds back: some always finds its way out
// along the edge. Chosen by us, by eye.
const HOLDS = 0.74
const GRAVITY = 9.81

/**
 * The share of a stream's rise that an eave holds back. A stream thrown farther
 * out than the eave by the time it has risen to it passes it by; one that has
 * only crept out of its opening meets the soffit.
 */
export function holdOf(eave: Eave, area: { x0: number; x1: number; y0: number }, speedMS: number, heat: number): number {
  const rise = area.y0 - eave.y
  if (rise < 0 || area.x1 < eave.x0 || area.x0 > eave.x1) return 0
  const time = Math.sqrt((2 * Math.max(0.1, rise)) / (GRAVITY * Math.max(0.02, heat)))
  return HOLDS * Math.max(0, Math.min(1, 1.25 - (speedMS * time) / (2 * eave.outM)))
}
