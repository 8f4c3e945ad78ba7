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

/** The eaves over the walls that face the eye. A gable has none: its rake runs up along the slope. */
export function eavesOf(view: View): Eave[] {
  if (isSmall(view)) return []
  const all = blocks(view)
  const along = view.side === 'A' || view.side === 'C'
  return all.flatMap((b): Eave[] => {
    if (b.box.attic) return along ? [edge(view, b, b.z0, EAVES_M)] : []
    return isBare(b, all) ? [edge(view, b, b.wallTop, OVERHANG_M)] : []
  })
}

function edge(view: View, b: Block, z: number, outM: number): Eave {
  const left = project(view, b.a0 - outM, z, b.d0 - outM)
  const right = project(view, b.a1 + outM, z, b.d0 - outM)
  return { x0: left.x, x1: right.x, y: left.y, outM }
}
