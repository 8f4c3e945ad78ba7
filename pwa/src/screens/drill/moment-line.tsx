import { drill } from '../../words/drill'
import type { Item, Part } from '../../wire.gen'
import { namesApart } from './moment-names'

const width = 320
const height = 58
const edge = 14

/** A call-out on the time that was watched: what began to show, what came, and when you spoke. */
export function MomentLine({ item, part }: { item: Pick<Item, 'watch'>; part: Part }) {
  const { from_s = 0, to_s = 1 } = item.watch ?? {}
  const x = (t: number) => edge + ((Math.min(to_s, Math.max(from_s, t)) - from_s) / (to_s - from_s)) * (width - 2 * edge)
  const shows = part.truth.find(({ at_s }) => at_s !== undefined)?.at_s
  const yours = part.given.at_s
  const names = namesApart(shows === undefined ? undefined : x(shows), part.event_s === undefined ? undefined : x(part.event_s), width)
  const since = (t: number) => Math.round(t - from_s)
  const said = [
    ...(shows === undefined ? [] : [drill.showedAt(since(shows))]),
    part.event_s === undefined ? drill.noEvent : drill.eventAt(since(part.event_s)),
  ].join(' ')
  return (
    <figure class="moment">
      <svg viewBox={`0 0 ${width} ${height}`} role="img" aria-label={said}>
        <path class="moment-axis" d={`M${edge} 34H${width - edge}M${edge} 29v10M${width - edge} 29v10`} />
        {shows !== undefined && <path class="moment-span" d={`M${x(shows)} 34H${x(part.event_s ?? to_s)}`} />}
        {names.shows !== undefined && <text x={names.shows} y="52" text-anchor="middle">{drill.shows}</text>}
        {part.event_s !== undefined && <path class="moment-event" d={`M${x(part.event_s)} 24v20`} />}
        {names.event !== undefined && <text x={names.event} y="52" text-anchor="middle">{drill.event}</text>}
        {yours !== undefined && <path class="moment-own" d={`M${x(yours)} 32l-6 -10h12z`} />}
        {yours !== undefined && <text class="moment-own" x={x(yours)} y="16" text-anchor="middle">{drill.yours}</text>}
      </svg>
      <figcaption class="small soft">{said}</figcaption>
    </figure>
  )
}
