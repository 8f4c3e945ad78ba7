import { layOut, type Place as Placed } from '../../render/layout'
import { frameView, turn } from '../../render/view'
import { trade } from '../../words/trade'
import type { Side } from '../../wire.gen'
import type { Rating } from './looks'
import type { Outside, Sketch } from './sketch'
import './elevation.css'

interface ElevationProps {
  sketch: Sketch
  side: Side
  openings: readonly Outside[]
  ratings?: Record<string, Rating>
  chosen?: string | undefined
  /** Where there is something to choose; else the openings are only drawn. */
  choose?(one: Outside): void
}

const sky = 0.9 // m of air above and beside the walls in the drawing

/** One side of the building, square on, with its openings, to press where one is chosen. */
export function Elevation({ sketch, side, openings, ratings = {}, chosen, choose }: ElevationProps) {
  const layout = layOut(sketch.plan)
  const view = frameView(layout, side, 1)
  const along = (x: number, y: number) => turn(view, x, y).along
  const length = side === 'A' || side === 'C' ? layout.x1 - layout.x0 : layout.y1 - layout.y0
  const scale = Math.max(length, layout.top) / 10
  const air = sky * Math.max(0.12, scale)
  const width = length + 2 * air
  const height = layout.top + air + 0.35 * air

  const left = (one: Placed) => Math.min(along(one.x0, one.y0), along(one.x1, one.y1))
  const box = (one: Placed) => {
    const breadth = Math.abs(along(one.x1, one.y1) - along(one.x0, one.y0))
    return {
      left: `${((left(one) + air) / width) * 100}%`,
      top: `${((layout.top - one.z1 + air) / height) * 100}%`,
      width: `${(breadth / width) * 100}%`,
      height: `${(Math.max(one.z1 - one.z0, 0.04 * layout.top) / height) * 100}%`,
    }
  }

  return (
    <div class="elevation" style={{ aspectRatio: `${width} / ${height}` }}>
      <svg viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" aria-hidden="true">
        {layout.boxes.map((room) => {
          const from = Math.min(along(room.x0, room.y0), along(room.x1, room.y1))
          const to = Math.max(along(room.x0, room.y0), along(room.x1, room.y1))
          return (
            <rect
              key={room.id}
              class="elevation-wall"
              x={from + air}
              y={layout.top - room.z1 + air}
              width={to - from}
              height={room.z1 - room.z0}
            />
          )
        })}
        <path class="elevation-ground" d={`M0 ${layout.top + air}H${width}`} />
      </svg>
      {openings.map((one) => {
        const placed = layout.places.find(({ id }) => id === one.id)
        if (!placed) return null
        const look = `elevation-opening elevation-${one.kind}`
        if (!choose) return <span key={one.id} class={look} style={box(placed)} />
        return (
          <button key={one.id} type="button" class={look} style={box(placed)} aria-pressed={one.id === chosen} onClick={() => choose(one)}>
            <Shown rating={ratings[one.id]} />
            <span class="visually-hidden">{`${one.name}, ${trade.kinds[one.kind]}`}</span>
          </button>
        )
      })}
    </div>
  )
}

// How a rating is drawn in its opening: a patch over the outflow, as thick as the
// density and as dark as the darkness that were given. A drawing, not a measure.
const thickness = [0, 0.25, 0.5, 0.8, 1]
const darkness = ['none', 'pale', 'pale', 'mid', 'dark']

/** What was rated here, in the opening itself. */
function Shown({ rating }: { rating: Rating | undefined }) {
  if (!rating?.flow) return null
  const plane = rating.flow === 'both' ? (rating.neutral_plane ?? 0.5) : rating.flow === 'out' ? 0 : 1
  const style = { height: `${100 * (1 - plane)}%`, opacity: thickness[rating.density ?? 2]! }
  return <span class={`elevation-smoke elevation-smoke-${darkness[rating.darkness ?? 3]}`} style={style} />
}
