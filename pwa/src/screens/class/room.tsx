import { useEffect } from 'preact/hooks'
import { busy } from '../../sw/update'
import { useOwnAnswers } from '../../class/own'
import type { Line } from '../../class/socket'
import { Steps } from '../../class/steps'
import { NotValidated } from '../../ui/not-validated'
import { Page } from '../../ui/page'
import { classes } from '../../words/class'
import type { ClassPhoneView, ClassPlaceView } from '../../wire.gen'
import { Ended, Gather } from './between'
import { Compare, Cutaway } from './compare'
import { OwnPace } from './own-pace'
import { Turns } from './turns'
import { Watch } from './watch'

interface RoomProps {
  view: ClassPhoneView
  /** The people on this phone. */
  places: readonly ClassPlaceView[]
  line: Line
  now(): number
}

/** The class as one phone of it: what stands on the screen follows the step. */
export function Room(props: RoomProps) {
  const { view, line } = props
  const title = view.scene && view.step !== 'ended' ? classes.scene(view.scene.number, view.scene.of) : view.title
  useEffect(() => {
    busy.value = view.step === 'watch' || view.step === 'commit'
    return () => void (busy.value = false)
  }, [view.step])
  return (
    <Page title={title} wide alone>
      <div class="class-room stack">
        <Steps step={view.step} pace={view.pace} />
        {line === 'away' && (
          <p class="class-away" role="status">
            {classes.away}
          </p>
        )}
        {view.rehearsal && <p class="class-rehearsal">{classes.rehearsal}</p>}
        <NotValidated />
        <AtStep {...props} />
      </div>
    </Page>
  )
}

function AtStep({ view, places, now }: RoomProps) {
  const own = useOwnAnswers(view.class)
  const { scene: shown, compare: spread } = view
  if (view.step === 'gather') return <Gather places={places} />
  if (view.step === 'ended') return <Ended />
  if (!own) return null
  if (view.step === 'commit' && view.pace === 'self') return <OwnPace view={view} places={places} own={own} />
  if (!shown) return null
  if (view.step === 'watch') return <Watch key={shown.id} shown={shown} now={now} />
  if (view.step === 'commit') return <Turns key={shown.id} view={view} shown={shown} places={places} own={own} />
  if (!spread) return null
  const Shown = view.step === 'compare' ? Compare : Cutaway
  return <Shown key={shown.id} shown={shown} spread={spread} places={places} own={own} />
}
