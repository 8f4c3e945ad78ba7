import { Button } from '../../ui/button'
import { decimal } from '../../words/number'
import { prop } from '../../words/prop'
import type { Bench } from './bench'
import { listed } from './moves'
import type { Now } from './view'

/** How fast the fire may run. Chosen by us: as it is, and two that pass the slow parts. */
const speeds = [1, 4, 16] as const

/** The time of the fire as a line: drag it back to any moment, with the moves marked on it. */
export function Timeline({ bench, now }: { bench: Bench; now: Now }) {
  const newestS = Math.max(now.first.headS, now.second?.headS ?? 0)
  const speed = bench.speed.value
  const next = speeds[(speeds.indexOf(speed as 1) + 1) % speeds.length]!
  const seek = (tS: number) => bench.seek(tS >= Math.floor(newestS) ? newestS : tS)
  return (
    <div class="prop-time">
      <div class="prop-line">
        <Marks bench={bench} now={now} newestS={newestS} />
        <input
          type="range" min={0} max={Math.max(1, newestS)} step={1} value={now.tS} aria-label={prop.moment}
          aria-valuetext={prop.momentOf(prop.clock(now.tS), prop.clock(newestS))}
          onInput={(event) => seek(Number(event.currentTarget.value))}
          onKeyDown={(event) => {
            const by = { ArrowLeft: -1, ArrowDown: -1, ArrowRight: 1, ArrowUp: 1, PageDown: -10, PageUp: 10 }[event.key]
            if (by === undefined) return
            event.preventDefault()
            seek(Math.max(0, Math.round(now.tS) + by))
          }}
        />
      </div>
      <button type="button" class="prop-speed" aria-label={prop.speedLabel(speed, next)} onClick={() => bench.setSpeed(next)}>
        {prop.speed(speed)}
      </button>
    </div>
  )
}

function Marks({ bench, now, newestS }: { bench: Bench; now: Now; newestS: number }) {
  const at = (tS: number) => `${(100 * tS) / Math.max(1, newestS)}%`
  const { scenario } = bench.building
  return (
    <div class="prop-marks" aria-hidden="true">
      {listed(now.first.moves, scenario).map(({ tS, indexes }) => <i key={indexes[0]} style={{ left: at(tS) }} />)}
      {now.second && listed(now.second.moves, scenario).map(({ tS, indexes }) => <i key={`o${indexes[0]}`} class="prop-mark-second" style={{ left: at(tS) }} />)}
      {now.branchS !== undefined && <b style={{ left: at(now.branchS) }} />}
    </div>
  )
}

/** Under the thumb: light it, then pause or go on, one second at a time, and draw the wall away. */
export function Bar({ bench, lit, cutaway, cut }: { bench: Bench; lit: boolean; cutaway: boolean; cut(away: boolean): void }) {
  const { loads, seat } = bench.building
  const paused = bench.paused.value
  return (
    <div class="prop-bar">
      {lit ? (
        <Button onClick={() => bench.setPaused(!paused)}>{paused ? prop.goOn : prop.pause}</Button>
      ) : (
        <Button look="main" onClick={() => { bench.lay(loads[0]!, seat); bench.setPaused(false) }}>{prop.light}</Button>
      )}
      <Button aria-label={prop.stepOnLabel} onClick={() => bench.stepOn(1)}>{prop.stepOn}</Button>
      <Button onClick={() => cut(!cutaway)} aria-pressed={cutaway}>{cutaway ? prop.putBack : prop.drawAway}</Button>
    </div>
  )
}

/** What is to be known about the time just now: how fast it truly runs, and where one stands in it. */
export function TimeNotes({ bench, now }: { bench: Bench; now: Now }) {
  const speed = bench.speed.value
  const newestS = Math.max(now.first.headS, now.second?.headS ?? 0)
  const back = now.second === undefined && newestS - now.tS > 1
  return (
    <div class="prop-notes" role="status">
      {now.behindS >= 1 && <p>{prop.catchingUp(Math.round(now.behindS))}</p>}
      {now.managesRate !== undefined && <p>{prop.manages(decimal(now.managesRate, now.managesRate < 3 ? 1 : 0), speed)}</p>}
      {back && <p>{prop.lookingBack(prop.clock(newestS))}</p>}
      {newestS >= bench.building.scenario.end_s && <p>{prop.over}</p>}
      {speed > 1 && !back && <p class="soft">{prop.speedNote}</p>}
    </div>
  )
}
