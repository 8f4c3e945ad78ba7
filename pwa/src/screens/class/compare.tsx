import { useState } from 'preact/hooks'
import { replyTo, type OwnAnswers } from '../../class/own'
import { Spread } from '../../class/spread'
import type { Own } from '../../class/spread-parts'
import { swatchCue } from '../../class/stops'
import { WithItem } from '../../class/with-item'
import { Button } from '../../ui/button'
import { classes } from '../../words/class'
import { drill } from '../../words/drill'
import type { Ask, ClassAskSpread, ClassPlaceView, ClassShown, ClassSpread, Item } from '../../wire.gen'
import { Looks } from '../drill/part-view'
import { Behind } from '../drill/reveal'
import { askName } from '../../words/spell-reply'
import { Why } from './why'

interface CompareProps {
  shown: ClassShown
  spread: ClassSpread
  places: readonly ClassPlaceView[]
  own: OwnAnswers | undefined
}

/** What the class saw, one's own dot among the others; the truth is not told yet. */
export function Compare(props: CompareProps) {
  return (
    <section class="stack">
      <h2>{classes.compareTitle}</h2>
      <p class="soft">{props.spread.marks ? classes.compareWhy : classes.noneYet}</p>
      <Spreads {...props} />
    </section>
  )
}

/** The wall drawn away: the same dots with what was true, and why. */
export function Cutaway(props: CompareProps) {
  return (
    <WithItem shown={props.shown}>
      {(item) => (
        <div class="item">
          <Opened item={item} />
          <div class="stack stack-wide">
            <h2>{classes.cutawayTitle}</h2>
            <Spreads {...props} />
            <Why item={item} own={props.shown.own} shown={props.spread.asks.every(({ ask }) => swatchCue(ask))} answer={props.places.map(({ place }) => props.own?.of(props.shown.id, place)).find(Boolean)} />
          </div>
        </div>
      )}
    </WithItem>
  )
}

function Opened({ item }: { item: Item }) {
  const [cutaway, setCutaway] = useState(true)
  return (
    <div class="stack">
      <Behind item={item} cutaway={cutaway} />
      <Button onClick={() => setCutaway(!cutaway)}>{cutaway ? drill.wallBack : drill.wallAway}</Button>
    </div>
  )
}

function Spreads({ shown, spread, places, own }: CompareProps) {
  const answers = places.map((person) => ({ person, answer: own?.of(shown.id, person.place) }))
  const asks = spread.asks.map(({ ask }) => ask)
  const silent = own && answers.every(({ answer }) => !answer)
  return (
    <>
      {silent && <p>{classes.notCommitted}</p>}
      <ul class="parts">
        {spread.asks.map((said) => (
          <OneSpread key={said.ask.id} said={said} asks={asks} own={ownOf(said, answers)} />
        ))}
      </ul>
    </>
  )
}

type Answers = { person: ClassPlaceView; answer: ReturnType<OwnAnswers['of']> }[]

function ownOf(said: ClassAskSpread, answers: Answers): Own[] {
  return answers.flatMap(({ person, answer }) => {
    const reply = replyTo(answer, said.ask.id)
    return reply ? [{ name: answers.length > 1 ? person.call_sign : classes.you, reply }] : []
  })
}

function OneSpread({ said, asks, own }: { said: ClassAskSpread; asks: readonly Ask[]; own: Own[] }) {
  const name = askName(said.ask, asks)
  const cue = swatchCue(said.ask)
  return (
    <li class="part stack">
      <h3 class="part-name">{name}</h3>
      <Spread said={said} name={name} own={own} />
      {cue && said.truth && <Looks cue={cue} given={own.map((one) => ({ name: one.name, level: one.reply.level })).filter(({ level }) => !isTrue(level, said))} truth={said.truth} />}
      {said.doubted && <p class="small">{classes.disagreed}</p>}
    </li>
  )
}

const isTrue = (level: number | undefined, { truth = [] }: ClassAskSpread) => truth.some((one) => one.level === level)
