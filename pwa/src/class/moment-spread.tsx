import { classes } from '../words/class'
import { drill } from '../words/drill'
import { sinceWatched, spellReply, spellTruth } from '../words/spell-reply'
import { trade } from '../words/trade'
import { words } from '../words/frame'
import { percent, stacked, Told, type SpreadProps } from './spread-parts'

/** How many places dots may stand in along the time that is watched. Chosen by us: beside each other on a phone. */
const places = 30

/** When it was reported: a dot a person on the time that was watched; once it is told, from when on it showed and what came. */
export function MomentSpread({ said, name, own = [] }: SpreadProps) {
  const { ask, moments = [], counts, truth: [truth] = [] } = said
  const along = alongOf(said)
  const quiet = counts.reduce((sum, { n }) => sum + n, 0)
  const dots = stacked(moments.map(along), places)
  const rows = 1 + Math.max(0, ...dots.map(({ at }) => at))
  const times = moments.map((at) => `${sinceWatched(ask, at)} s`).join('; ') || classes.nobody
  return (
    <div class="spread-moment">
      <div class="spread-time" role="img" aria-label={classes.momentsSaid(name, times)} style={{ '--rows': rows }}>
        {truth?.at_s !== undefined && (
          <div class="spread-time-true" style={{ left: percent(along(truth.at_s)), right: percent(1 - along(truth.event_s ?? Infinity)) }} />
        )}
        {truth?.event_s !== undefined && <div class="spread-time-event" style={{ left: percent(along(truth.event_s)) }} />}
        {dots.map(({ share, at }, n) => (
          <span key={n} class="pile-dot" style={{ left: percent(share), '--row': at }} />
        ))}
        {own.map(({ name: whose, reply }) => reply.at_s !== undefined && <span key={whose} class="spread-time-own" style={{ left: percent(along(reply.at_s)) }} />)}
      </div>
      <dl class="spread-told">
        {truth && <Told name={words.app.truth} said={spellTruth(ask, truth)} />}
        {own.map(({ name: whose, reply }) => (
          <Told key={whose} name={whose} said={spellReply(ask, reply)} />
        ))}
        {quiet > 0 && <Told name={drill.quiet} said={String(quiet)} />}
        {said.unsure > 0 && <Told name={trade.cannotTell} said={String(said.unsure)} />}
      </dl>
    </div>
  )
}

/** Where a time lies, as a share of what was watched. */
function alongOf({ ask, moments = [] }: SpreadProps['said']): (t: number) => number {
  const { from_s, to_s } = ask.watch ?? { from_s: 0, to_s: Math.max(1, ...moments) }
  return (t) => Math.max(0, Math.min(1, (t - from_s) / (to_s - from_s)))
}
