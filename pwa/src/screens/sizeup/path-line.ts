import type { Layout, Place } from '../../render/layout'

// Where the flow path runs on the plan, storey by storey, in metres.

export interface Point {
  x: number
  y: number
}

/** How far outside the wall a path begins and ends, as a share of the building's size. Chosen by us. */
const outreach = 0.09

/** The path's lines on one storey; each is drawn as an arrow. */
export function pathLines(layout: Layout, rooms: ReadonlySet<string>, path: readonly string[]): Point[][] {
  const nodes = withRooms(layout, path)
  const lines: Point[][] = []
  let line: Point[] = []
  nodes.forEach((id, n) => {
    const points = pointsOf(layout, rooms, id, n === 0 ? 'first' : n === nodes.length - 1 ? 'last' : 'between')
    line.push(...points)
    if (points.length === 0 && line.length) lines.push(line.splice(0))
  })
  lines.push(line)
  // A storey that the path does not touch has no line.
  const drawn = lines.filter((one) => one.length > 1)
  return path.length > 0 && path[0] === path.at(-1) ? drawn.map(turned) : drawn
}

/** The path with the compartment between every two openings, where it was not given. */
function withRooms(layout: Layout, path: readonly string[]): string[] {
  const ends = path.length === 1 ? [path[0]!, path[0]!] : path
  return ends.flatMap((id, n) => {
    const [here, next] = [placeOf(layout, id), placeOf(layout, ends[n + 1])]
    if (!here || !next) return [id]
    const [from, to] = [roomOf(layout, here), roomOf(layout, next)]
    return from === to ? [id, from] : [id, from, to]
  })
}

const placeOf = (layout: Layout, id: string | undefined) => layout.places.find((one) => one.id === id)

function roomOf(layout: Layout, { opening }: Place): string {
  return layout.boxes.some(({ id }) => id === opening.from) ? opening.from : opening.to
}

function pointsOf(layout: Layout, rooms: ReadonlySet<string>, id: string, where: 'first' | 'between' | 'last'): Point[] {
  const box = layout.boxes.find((one) => one.id === id)
  if (box) return rooms.has(id) ? [middle(box)] : []
  const place = placeOf(layout, id)
  if (!place || !(rooms.has(place.opening.from) || rooms.has(place.opening.to))) return []
  const at = middle(place)
  if (where === 'between') return [at]
  const outer = outside(layout, place, at)
  return where === 'first' ? [outer, at] : [at, outer]
}

const middle = (one: { x0: number; x1: number; y0: number; y1: number }): Point => ({
  x: (one.x0 + one.x1) / 2,
  y: (one.y0 + one.y1) / 2,
})

function outside(layout: Layout, { lies }: Place, at: Point): Point {
  const reach = outreach * Math.max(layout.x1 - layout.x0, layout.y1 - layout.y0)
  switch (lies) {
    case 'A':
      return { x: at.x, y: at.y - reach }
    case 'C':
      return { x: at.x, y: at.y + reach }
    case 'B':
      return { x: at.x - reach, y: at.y }
    case 'D':
      return { x: at.x + reach, y: at.y }
    default:
      return at
  }
}

/** A path that goes in and out by one opening: its way back beside its way in. */
function turned(line: Point[]): Point[] {
  const half = Math.floor(line.length / 2)
  const [from, to] = [line[0]!, line[half]!]
  const length = Math.hypot(to.x - from.x, to.y - from.y) || 1
  const shift = 0.04 * length + 0.15
  const across = { x: (-(to.y - from.y) / length) * shift, y: ((to.x - from.x) / length) * shift }
  const moved = (point: Point, by: number) => ({ x: point.x + by * across.x, y: point.y + by * across.y })
  return [...line.slice(0, half + 1).map((point) => moved(point, -1)), ...line.slice(half).map((point) => moved(point, 1))]
}
