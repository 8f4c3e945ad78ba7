import { useEffect } from 'preact/hooks'
import { guardBusy } from '../../sw/update'
import { Button } from '../../ui/button'
import { NotValidated } from '../../ui/not-validated'
import { Page } from '../../ui/page'
import { words } from '../../words/frame'
import { drill } from '../../words/drill'
import { End } from './end'
import { ItemView } from './item-view'
import { Matching } from './matching'
import { Reveal } from './reveal'
import { PictureToCome } from './scene-view'
import { Start } from './start'
import { failed, item, leave, matching, openScene, phase, restore, set, showing, verdict } from './state'
import './drill.css'

/** Drill: short sets of scenes, each committed before it is explained. */
export default function Drill() {
  useEffect(() => void restore(), [])
  useEffect(() => guardBusy(leave), [])
  if (showing.value === 'scene') return <SceneOfSet />
  if (showing.value === 'end') return <End />
  return matching.value ? <Matching /> : <Start />
}

function SceneOfSet() {
  const open = set.value!
  const revealed = phase.value === 'revealed'
  const at = open.done.length + (revealed ? 0 : 1)
  const shown = item.value
  useEffect(() => scrollTo(0, 0), [at, revealed]) // what comes next begins at its beginning
  return (
    <Page
      title={shown ? drill.kinds[shown.kind] : drill.scene(at, open.scenes.length)}
      wide
      alone
      aside={<Progress at={at} of={open.scenes.length} />}
    >
      <div class="drill-top">
        <NotValidated />
        <Button look="quiet" onClick={leave}>
          {drill.leave}
        </Button>
      </div>
      {failed.value && !shown && (
        <div class="stack">
          <p role="alert">{drill.failedWhy(failed.value)}</p>
          <Button onClick={() => void openScene()}>{words.app.tryAgain}</Button>
        </div>
      )}
      {!shown && !failed.value && <Making />}
      {shown && !revealed && <ItemView key={open.done.length} item={shown} />}
      {shown && revealed && verdict.value && <Reveal key={open.done.length} item={shown} verdict={verdict.value} />}
    </Page>
  )
}

/** The place of a scene that is being made. */
function Making() {
  return (
    <div class="item item-asking">
      <figure class="item-scene">
        <PictureToCome said={drill.making} />
      </figure>
    </div>
  )
}

const tickPx = 8 // from one tick to the next: a set of ten stands beside its longest title on a phone

/** Where in the set one is: filled ticks on a line. */
function Progress({ at, of }: { at: number; of: number }) {
  return (
    <span class="progress">
      <svg width={of * tickPx} height="14" viewBox={`0 0 ${of * tickPx} 14`} aria-hidden="true">
        {Array.from({ length: of }, (_, n) => (
          <path key={n} d={`M${(n + 0.5) * tickPx} ${n < at ? 0 : 9}v14`} class={n < at ? 'progress-on' : ''} />
        ))}
      </svg>
      <span class="small soft">{drill.scene(at, of)}</span>
    </span>
  )
}
