import { replyTo, type OwnAnswers } from '../../class/own'
import { WithItem } from '../../class/with-item'
import { useFocusIfLost } from '../../ui/focus'
import { classes } from '../../words/class'
import type { ClassPlaceView, ClassShown, Item } from '../../wire.gen'
import { askName, spellReply } from '../../words/spell-reply'

interface CommittedProps {
  shown: ClassShown
  places: readonly ClassPlaceView[]
  own: OwnAnswers
}

/** After the commit, until the class goes on: what was kept, and where. */
export function Committed({ shown, places, own }: CommittedProps) {
  const arrived = hasArrived(shown, places)
  const said = useFocusIfLost<HTMLParagraphElement>('committed')
  return (
    <section class="stack">
      <p class="committed" role="status" ref={said} tabIndex={-1}>
        <Tick />
        {arrived ? classes.keptClass : classes.keptHere}
      </p>
      {!arrived && <p class="soft">{classes.keptWhy}</p>}
      <WithItem shown={shown}>
        {(item) => (
          <>
            {places.map((person) => (
              <Given key={person.place} item={item} shown={shown} person={person} own={own} named={places.length > 1} />
            ))}
          </>
        )}
      </WithItem>
    </section>
  )
}

/** Everyone on this phone who is still of the class is known to the server to have committed. */
function hasArrived(shown: ClassShown, you: readonly ClassPlaceView[]): boolean {
  return you.length > 0 && you.every(({ committed, removed }) => removed || committed.includes(shown.id))
}

function Tick() {
  return (
    <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
      <path d="M3 11l5 5L17 4" fill="none" stroke="currentColor" stroke-width="2.5" />
    </svg>
  )
}

interface GivenProps {
  item: Item
  shown: ClassShown
  person: ClassPlaceView
  own: OwnAnswers
  named: boolean
}

function Given({ item, shown, person, own, named }: GivenProps) {
  const answer = own.of(shown.id, person.place)
  const { asks } = item.question
  return (
    <>
      {named && <h2 class="part-name">{person.call_sign}</h2>}
      <dl class="review">
        {asks.map((ask) => {
          const reply = replyTo(answer, ask.id)
          return (
            <div key={ask.id}>
              <dt class="soft">{askName(ask, asks)}</dt>
              <dd>{reply && <strong>{spellReply(ask, reply)}</strong>}</dd>
            </div>
          )
        })}
      </dl>
    </>
  )
}
