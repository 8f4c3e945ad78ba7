import { layOut, type Layout, type Place } from '../../render/layout'
import { sizeUp } from '../../words/size-up'
import type { Finding } from '../../wire.gen'
import { atticsOf, storeysOf, type Sketch } from './sketch'
import { pathLines, type Point } from './path-line'
import { spellPath } from './path-words'
import './plan-drawing.css'

/** The plan of each storey, top storey first, with the flow path drawn through it: then only of those that it touches. Alpha is at the foot. */
export function PlanDrawing({ sketch, finding }: { sketch: Sketch; finding?: Finding | undefined }) {
  const layout = layOut(sketch.plan)
  const floors = storeysOf(sketch.plan)
  const named = [
    ...floors.map((floor, n) => ({ floor, name: sizeUp.division(n + 1) })),
    ...atticsOf(sketch.plan).map((floor) => ({ floor, name: sizeUp.underRoof })),
  ]
  const path = finding?.path ?? []
  const touched = named.filter(({ floor }) => pathLines(layout, roomsOn(layout, floor), path).length > 0)
  const said = finding && path.length ? sizeUp.pathDrawing(spellPath(finding)) : sketch.name
  return (
    <div class="plans" role="img" aria-label={said}>
      {(touched.length > 0 ? touched : named).toReversed().map(({ floor, name }) => (
        <Storey key={floor} layout={layout} floor={floor} name={name} path={path} finding={finding} />
      ))}
    </div>
  )
}

const boxesOn = (layout: Layout, floor: number) => layout.boxes.filter((box) => box.z0 === floor)
const roomsOn = (layout: Layout, floor: number) => new Set(boxesOn(layout, floor).map(({ id }) => id))

interface StoreyProps {
  layout: Layout
  floor: number
  name: string
  path: readonly string[]
  finding: Finding | undefined
}

function Storey({ layout, floor, name, path, finding }: StoreyProps) {
  const boxes = boxesOn(layout, floor)
  const ids = roomsOn(layout, floor)
  const places = layout.places.filter(({ opening }) => ids.has(opening.from) || ids.has(opening.to))
  const size = Math.max(layout.x1 - layout.x0, layout.y1 - layout.y0)
  const edge = 0.12 * size // room for an arrow that begins or ends outside
  // The plan's y runs away from Alpha; the drawing's y runs down to it.
  const at = ({ x, y }: Point): Point => ({ x: x - layout.x0 + edge, y: layout.y1 - y + edge })
  const width = layout.x1 - layout.x0 + 2 * edge
  const height = layout.y1 - layout.y0 + 2 * edge

  return (
    <figure class="plan-storey">
      <figcaption class="plan-word">{name}</figcaption>
      <svg class="plan" viewBox={`0 0 ${width} ${height}`} aria-hidden="true">
        {boxes.map((box) => {
          const corner = at({ x: box.x0, y: box.y1 })
          return (
            <rect key={box.id} class="plan-room" x={corner.x} y={corner.y} width={box.x1 - box.x0} height={box.y1 - box.y0} />
          )
        })}
        {places.map((place) => (
          <OpeningMark key={place.id} place={place} at={at} role={finding?.openings[place.id]?.role} />
        ))}
        {pathLines(layout, ids, path).map((line, n) => (
          <Arrow key={n} points={line.map(at)} size={size} />
        ))}
      </svg>
    </figure>
  )
}

function OpeningMark({ place, at, role }: { place: Place; at(point: Point): Point; role: string | undefined }) {
  const from = at({ x: place.x0, y: place.y0 })
  const to = at({ x: place.x1, y: place.y1 })
  const shut = place.opening.open === 0
  const look = `plan-gap${shut ? ' plan-gap-shut' : ''}${role ? ` plan-role-${role}` : ''}`
  if (place.z0 !== place.z1) return <path class={look} d={`M${from.x} ${from.y}L${to.x} ${to.y}`} />
  return (
    <rect class="plan-hatch" x={from.x} y={to.y} width={Math.abs(to.x - from.x)} height={Math.abs(from.y - to.y)} />
  )
}

function Arrow({ points, size }: { points: Point[]; size: number }) {
  const line = points.map(({ x, y }, n) => `${n ? 'L' : 'M'}${x} ${y}`).join('')
  const head = 0.06 * size
  const [last, beforeLast] = [points.at(-1)!, points.at(-2)!]
  const turn = Math.atan2(last.y - beforeLast.y, last.x - beforeLast.x)
  const barb = (by: number) => `${last.x - head * Math.cos(turn + by)} ${last.y - head * Math.sin(turn + by)}`
  return (
    <g class="plan-path" stroke-width={0.02 * size}>
      <path d={line} />
      <path d={`M${barb(0.5)}L${last.x} ${last.y}L${barb(-0.5)}`} />
    </g>
  )
}
