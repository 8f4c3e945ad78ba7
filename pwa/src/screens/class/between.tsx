import { classes } from '../../words/class'
import type { ClassPlaceView } from '../../wire.gen'
import { Leave } from './leave'
import { Second } from './second'

/** Before the first scene. */
export function Gather({ places }: { places: readonly ClassPlaceView[] }) {
  return (
    <section class="stack stack-wide">
      <h2>{classes.waitTitle}</h2>
      <p>{classes.waiting}</p>
      <ul class="class-you">
        {places.map(({ place, call_sign }) => (
          <li key={place}>{classes.youAre(call_sign)}</li>
        ))}
      </ul>
      {places.length === 1 && <Second />}
      <Leave />
    </section>
  )
}

/** After the last. */
export function Ended() {
  return (
    <section class="stack stack-wide">
      <h2>{classes.over}</h2>
      <p>{classes.overWhy}</p>
      <a class="button" href="/log">
        {classes.toLog}
      </a>
      <Leave />
    </section>
  )
}
