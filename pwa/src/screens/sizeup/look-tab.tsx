import { Button } from '../../ui/button'
import { rise } from '../../ui/scroll'
import { words } from '../../words/frame'
import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import { isCall, isTold, spellFirst } from '../../words/stages'
import { SIDE_WORDS } from '../../wire.gen'
import { Context } from './context'
import { Elevation } from './elevation'
import { OpeningPanel } from './opening-panel'
import { all, face, facing, finding, here, look, lookAt, looks, opening, sketch, tab, type Place } from './state'

/** Walking round the building: a side at a time, an opening at a time. */
export function LookTab() {
  const current = here.value.find(({ id }) => id === opening.value)
  return (
    <div class="stack stack-wide">
      <SideWalk />
      {current ? <OpeningPanel key={current.id} one={current} /> : <p>{sizeUp.noneHere}</p>}
      <WalkOn />
      <Context />
      <ReadingLine />
    </div>
  )
}

function SideWalk() {
  const place = facing.value
  const shown = sketch.value
  if (!shown) return null
  return (
    <section class="side-walk stack" aria-label={sizeUp.sides}>
      <div class="side-head">
        <Button look="quiet" onClick={() => face(beside(-1))} aria-label={sizeUp.walkOn(placeName(beside(-1)))}>
          ‹ {shortName(beside(-1))}
        </Button>
        <strong>{placeName(place)}</strong>
        <Button look="quiet" onClick={() => face(beside(1))} aria-label={sizeUp.walkOn(placeName(beside(1)))}>
          {shortName(beside(1))} ›
        </Button>
      </div>
      {looks.value.length > 1 && <p class="small soft">{sizeUp.look(looks.value.length, minutesSince())}</p>}
      <Elevation
        sketch={shown}
        side={place === 'roof' ? 'A' : place}
        openings={here.value}
        ratings={look.value?.ratings ?? {}}
        chosen={opening.value}
        choose={lookAt}
      />
    </section>
  )
}

function minutesSince(): number {
  const [first, last] = [looks.value[0]!, looks.value.at(-1)!]
  return Math.round((last.at - first.at) / 60_000)
}

function WalkOn() {
  return (
    <Button wide onClick={() => face(beside(1))}>
      {sizeUp.walkOn(placeName(beside(1)))}
    </Button>
  )
}

/** The places to stand, clockwise; the roof only where it has an opening. */
function beside(by: number): Place {
  const places: Place[] = [...SIDE_WORDS]
  if (all.value.some(({ side }) => side === undefined)) places.push('roof')
  return places[(places.indexOf(facing.value) + by + places.length) % places.length]!
}

function shortName(place: Place): string {
  return place === 'roof' ? trade.roof : trade.sides[place]
}

function placeName(place: Place): string {
  return place === 'roof' ? trade.roof : sizeUp.side(trade.sides[place])
}

/** The reading in one line, while one is still looking. */
function ReadingLine() {
  const read = finding.value
  if (!read) return null
  return (
    <button type="button" class="reading-line" onClick={() => ((tab.value = 'reading'), rise('.page'))}>
      <span class="small">
        {isCall(read) && <span class="soft">{sizeUp.nowReading} </span>}
        <strong>{isTold(read) && !isCall(read) ? sizeUp.notToldYet : spellFirst(read)}</strong>
      </span>
      <span aria-hidden="true">›</span>
      <span class="visually-hidden">
        {sizeUp.seeReading}. {words.caution.trainingOnly}
      </span>
    </button>
  )
}
