import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { useFocusIfLost } from '../../ui/focus'
import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import { levelName, hues, type OrdinalCue } from '../../words/scales'
import { CueControl } from './cue-control'
import { cueOf, cuesFor, type Asked, type CueValue, type Rating } from './looks'
import type { Outside } from './sketch'
import { before, cue, look, nextLookAt, rate } from './state'
import './opening-panel.css'

/** One opening: how it stands, and its cues, one open at a time. */
export function OpeningPanel({ one }: { one: Outside }) {
  const rating = look.value?.ratings[one.id]
  const earlier = before.value?.ratings[one.id]
  const side = one.side ? sizeUp.side(trade.sides[one.side]) : trade.roof
  return (
    <section class="opening stack" aria-labelledby="opening-name">
      <div class="row spread">
        <h2 id="opening-name">{one.name}</h2>
        <span class="small soft">
          {side} · {sizeUp.division(one.floor)}
        </span>
      </div>
      <Cues one={one} rating={rating} earlier={earlier} />
    </section>
  )
}

function Cues({ one, rating, earlier }: { one: Outside; rating: Rating | undefined; earlier: Rating | undefined }) {
  const { main, more } = cuesFor(one, rating, nextLookAt(one))
  const left = (cues: readonly Asked[]) => cues.filter((which) => cueOf(rating, which) === undefined).length
  const row = (which: Asked) => (
    <li key={which} class={which === cue.value ? 'cue cue-open' : 'cue'}>
      <CueRow one={one} which={which} value={cueOf(rating, which)} earlier={cueOf(earlier, which)} />
    </li>
  )
  return (
    <div>
      <ul class="cues">{main.map(row)}</ul>
      {left(main) === 0 && (
        <p class="cues-done small soft" role="status">
          {left(more) === 0 ? sizeUp.done : sizeUp.toldMost}
        </p>
      )}
      <MoreCues left={left(more)} held={cue.value !== undefined && more.includes(cue.value)}>
        {more.map(row)}
      </MoreCues>
    </div>
  )
}

/** The cues that seldom tell most, folded away until one wants them or one of them is being asked. */
function MoreCues({ left, held, children }: { left: number; held: boolean; children: ComponentChildren }) {
  const [wanted, setWanted] = useState(false)
  const open = wanted || held
  return (
    <>
      <button type="button" class="cue-head cues-more" aria-expanded={open} onClick={() => setWanted(!open)}>
        <span>{sizeUp.moreCues(left)}</span>
        <span aria-hidden="true">{open ? '\u2212' : '+'}</span>
      </button>
      {open && <ul class="cues">{children}</ul>}
    </>
  )
}

interface CueRowProps {
  one: Outside
  which: Asked
  value: CueValue | null | undefined
  earlier: CueValue | null | undefined
}

function CueRow({ one, which, value, earlier }: CueRowProps) {
  const open = which === cue.value
  const head = useFocusIfLost<HTMLButtonElement>(open)
  return (
    <>
      <button
        ref={open ? head : null}
        type="button"
        class="cue-head"
        aria-expanded={open}
        onClick={() => (cue.value = open ? undefined : which)}
      >
        <span>
          {which === 'state' ? sizeUp.stands : trade.cues[which]}
          {value === undefined && which === nextLookAt(one) && <span class="cue-next small">{sizeUp.tellsMost}</span>}
        </span>
        <span class={value === undefined ? 'soft' : 'cue-value'}>{spellCue(which, value)}</span>
      </button>
      {open && (
        <div class="cue-body stack">
          {which !== 'state' && <p>{sizeUp.ask[which]}</p>}
          <CueControl
            which={which}
            value={value}
            earlier={earlier}
            set={(next, moveOn) => rate(one, which, next, moveOn)}
          />
          {which === 'neutral_plane' && value !== undefined && (
            <Button onClick={() => rate(one, which, value)}>{sizeUp.setIt}</Button>
          )}
        </div>
      )}
    </>
  )
}

/** A cue's value in words. */
function spellCue(which: Asked, value: CueValue | null | undefined): string {
  if (value === undefined) return sizeUp.notYet
  if (value === null) return trade.cannotTell
  switch (which) {
    case 'state':
      return trade.states[value as keyof typeof trade.states]
    case 'flow':
      return trade.flows[value as keyof typeof trade.flows]
    case 'neutral_plane':
      return trade.planeAt(value as number)
    case 'colour':
      return hues.find((hue) => hue.colour === value)?.name ?? String(value)
    case 'flame':
      return trade.flames[value as keyof typeof trade.flames]
    case 'window':
      return trade.glass[value as keyof typeof trade.glass]
    case 'churning':
    case 'pulsing':
    case 'vanishes':
      return sizeUp[which][value ? 'yes' : 'no']
    default:
      return levelName(which as OrdinalCue, value as number)
  }
}
