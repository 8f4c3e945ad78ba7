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

/** The bare block to the left or right of one, as high and as near, on to which its roof goes. */
function besideUnderRoof(b: Block, all: readonly Block[], side: 'left' | 'right'): Block | undefined {
  const near = (p: number, q: number) => Math.abs(p - q) < 0.05
  return all.find((o) => o !== b && isBare(o, all) && near(o.wallTop, b.wallTop) && near(o.d0, b.d0) && (side === 'left' ? near(o.a1, b.a0) : near(o.a0, b.a1)))
}

/** Where the roof begins that ends over a block; undefined where it goes on to another. */
export function roofStart(b: Block, all: readonly Block[]): number | undefined {
  if (besideUnderRoof(b, all, 'right')) return undefined
  let first = b
  for (let more: Block | undefined = b; more; more = besideUnderRoof(more, all, 'left')) first = more
  return first.a0
}

/** The eaves over the walls that face the eye. A gable has none: its rake runs up along the slope. */
export function eavesOf(view: View): Eave[] {
  if (isSmall(view)) return []
  const all = blocks(view)
  const along = view.side === 'A' || view.side === 'C'
  return all.flatMap((b): Eave[] => {
    if (b.box.attic) return along ? [edge(view, b, b.a0, b.z0, EAVES_M)] : []
    const start = isBare(b, all) ? roofStart(b, all) : undefined
    return start === undefined ? [] : [edge(view, b, start, b.wallTop, OVERHANG_M)]
  })
}

function edge(view: View, { a1, d0 }: Block, a0: number, z: number, outM: number): Eave {
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
