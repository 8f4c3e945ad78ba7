import { useState } from 'preact/hooks'
import type { OwnAnswers } from '../../class/own'
import { WithItem } from '../../class/with-item'
import { Button } from '../../ui/button'
import { classes } from '../../words/class'
import { drill } from '../../words/drill'
import type { ClassPhoneView, ClassPlaceView, ClassShown, Item } from '../../wire.gen'
import { Asks } from '../drill/asks'
import { CallOut } from '../drill/call-out'
import { Shown } from '../drill/item-view'
import { useAnswering } from './answering'
import { Committed } from './committed'

interface TurnsProps {
  view: ClassPhoneView
  shown: ClassShown
  places: readonly ClassPlaceView[]
  own: OwnAnswers
}

/** Everyone on this phone commits in turn; the phone is handed over in between. */
export function Turns({ view, shown, places, own }: TurnsProps) {
  const [inHand, setInHand] = useState(places[0]?.place)
  const due = places.find(({ place }) => !own.of(shown.id, place))
  if (!due) return <Committed shown={shown} places={places} own={own} />
  if (due.place !== inHand)
    return (
      <section class="stack class-hand">
        <h2>{classes.handTo(due.call_sign)}</h2>
        <Button look="main" wide onClick={() => setInHand(due.place)}>
          {classes.iAm(due.call_sign)}
        </Button>
      </section>
    )
  return (
    <WithItem shown={shown}>
      {(item) => <OneTurn key={due.place} item={item} view={view} shown={shown} person={due} named={places.length > 1} />}
    </WithItem>
  )
}

interface OneTurnProps {
  item: Item
  view: ClassPhoneView
  shown: ClassShown
  person: ClassPlaceView
  named: boolean
}

function OneTurn({ item, view, shown, person, named }: OneTurnProps) {
  const [ready, setReady] = useState(false)
  const where = { id: view.class, scene: shown.id, place: person.place, ...(view.rehearsal && { rehearsal: true }) }
  const answering = useAnswering(item, shown.own, where)
  const running = item.kind === 'call_out' && answering.replies.length === 0
  const show = () => setReady(true)
  return (
    <div class="item item-asking">
      <p class="item-question">
        {named && <strong>{classes.answersOf(person.call_sign)} </strong>}
        {item.question.text}
      </p>
      {running ? <CallOut item={item} ready={show} reply={answering.reply} /> : <Shown item={item} ready={show} atS={answering.replies[0]?.at_s ?? item.watch?.to_s} />}
      {ready && !running && <Asks item={item} answering={answering} trouble={answering.failed && <p role="alert">{drill.notKept}</p>} />}
    </div>
  )
}
