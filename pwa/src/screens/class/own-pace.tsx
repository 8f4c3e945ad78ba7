import { useState } from 'preact/hooks'
import type { OwnAnswers } from '../../class/own'
import { Button } from '../../ui/button'
import { classes } from '../../words/class'
import type { ClassPhoneView, ClassPlaceView, ClassShown } from '../../wire.gen'
import { Committed } from './committed'
import { Turns } from './turns'

interface OwnPaceProps {
  view: ClassPhoneView
  places: readonly ClassPlaceView[]
  own: OwnAnswers
}

/** A self-paced class: one scene after the other, each committed before the next. */
export function OwnPace({ view, places, own }: OwnPaceProps) {
  const whole = ({ id }: ClassShown) => places.every(({ place }) => own.of(id, place))
  const open = view.scenes.find((shown) => !whole(shown))
  const [at, go] = useState(open?.id)
  const shown = view.scenes.find(({ id }) => id === at) ?? open
  if (!shown) return <AllDone />
  const where = <p class="small soft">{classes.scene(shown.number, view.scenes.length)}</p>
  if (!whole(shown))
    return (
      <>
        {where}
        <Turns key={shown.id} view={view} shown={shown} places={places} own={own} />
      </>
    )
  return (
    <div class="stack">
      {where}
      <Committed shown={shown} places={places} own={own} />
      {open ? (
        <Button look="main" wide onClick={() => go(open.id)}>
          {classes.nextScene}
        </Button>
      ) : (
        <AllDone />
      )}
    </div>
  )
}

function AllDone() {
  return (
    <section class="stack">
      <h2>{classes.allDone}</h2>
      <p>{classes.allDoneWhy}</p>
    </section>
  )
}
