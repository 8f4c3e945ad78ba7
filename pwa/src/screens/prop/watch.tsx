import type { ComponentChildren } from 'preact'
import { Scene } from '../../render'
import { prop } from '../../words/prop'
import type { Side } from '../../wire.gen'
import type { Bench, Which } from './bench'
import type { Now, View } from './view'

interface WatchProps {
  bench: Bench
  now: Now
  side: Side
  cutaway: boolean
  selected: string | undefined
  select(opening: string): void
  /** What stands below the pictures and stays with them. */
  children: ComponentChildren
}

/** The fire, or both fires on one clock, to look at and to put a finger on. */
export function Watch({ children, ...props }: WatchProps) {
  const { now, bench } = props
  return (
    <div class="prop-watch" data-two={now.second !== undefined} data-small={bench.building.small}>
      <div class="prop-scenes">
        <One {...props} which="first" view={now.first} name={now.second && prop.fires.first} />
        {now.second && <One {...props} which="second" view={now.second} name={prop.fires.second} />}
      </div>
      <div class="prop-clock" role="timer" aria-label={prop.clockLabel}>{prop.clock(now.tS)}</div>
      {children}
    </div>
  )
}

interface OneProps extends Omit<WatchProps, 'children' | 'now'> { which: Which; view: View; name: string | undefined }

function One({ bench, which, view, name, side, cutaway, selected, select }: OneProps) {
  return (
    <figure class={`prop-scene prop-scene-${which}`}>
      <Scene
        scenario={bench.building.scenario} side={side} frame={which === 'first' ? bench.first : bench.second}
        cutaway={cutaway} selected={selected} onPick={select}
        onOpen={(id, open) => { select(id); bench.setOpening(id, open, which, open === 0 || open === 1) }}
        wind={{ m_s: view.windMS, from: view.windFrom }} paused={bench.paused.value}
      />
      {name && <figcaption>{name}</figcaption>}
    </figure>
  )
}
