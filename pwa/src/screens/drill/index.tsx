import { useEffect } from 'preact/hooks'
import { guardBusy } from '../../app/update'
import { Button } from '../../ui/button'
import { NotValidated } from '../../ui/not-validated'
import { Page } from '../../ui/page'
import { words } from '../../words/en'
import { drill } from '../../words/en/drill'
import { ITEM_KIND_WORDS } from '../../wire.gen'
import { End } from './end'
import { ItemView } from './item-view'
import { Reveal } from './reveal'
import { begin, failed, item, leave, openScene, phase, restore, restored, set, showing, verdict } from './state'
import './drill.css'

/** Drill: sets of five scenes, each committed before it is explained. */
export default function Drill() {
  useEffect(() => void restore(), [])
  useEffect(() => guardBusy(leave), [])
  if (showing.value === 'scene') return <SceneOfSet />
  if (showing.value === 'end') return <End />
  return <Start />
}

function Start() {
  const open = set.value && set.value.done.length < set.value.scenes.length ? set.value : undefined
  return (
    <Page title={words.screens.drill.name}>
      <div class="stack stack-wide">
        <NotValidated />
        <p class="drill-lead">{drill.lead}</p>
        {failed.value && <p role="alert">{failed.value}</p>}
        <div class="stack" hidden={!restored.value}>
          {open && (
            <Button look="main" wide onClick={() => void openScene()}>
              {drill.resume(open.done.length + 1, open.scenes.length)}
            </Button>
          )}
          <Button look={open ? 'plain' : 'main'} wide onClick={() => void begin()}>
            {open ? drill.fresh : drill.begin}
          </Button>
        </div>
        <section class="stack">
          <h2>{drill.whatComes}</h2>
          <dl class="kinds">
            {ITEM_KIND_WORDS.map((kind) => (
              <div key={kind}>
                <dt>{drill.kinds[kind]}</dt>
                <dd class="soft">{drill.kindsWhy[kind]}</dd>
              </div>
            ))}
          </dl>
        </section>
      </div>
    </Page>
  )
}

function SceneOfSet() {
  const open = set.value!
  const revealed = phase.value === 'revealed'
  const at = open.done.length + (revealed ? 0 : 1)
  const shown = item.value
  return (
    <Page
      title={shown ? drill.kinds[shown.kind] : drill.scene(at, open.scenes.length)}
      wide
      alone
      aside={<Progress at={at} of={open.scenes.length} />}
    >
      <NotValidated />
      {failed.value && !shown && (
        <div class="stack">
          <p role="alert">{`${drill.failed}: ${failed.value}`}</p>
          <Button onClick={() => void openScene()}>{words.app.tryAgain}</Button>
        </div>
      )}
      {!shown && !failed.value && <p role="status">{drill.making}</p>}
      {shown && !revealed && <ItemView key={open.done.length} item={shown} />}
      {shown && revealed && verdict.value && <Reveal key={open.done.length} item={shown} verdict={verdict.value} />}
      <Button look="quiet" onClick={leave}>
        {drill.leave}
      </Button>
    </Page>
  )
}

/** Where in the set one is: filled ticks on a line. */
function Progress({ at, of }: { at: number; of: number }) {
  return (
    <span class="progress">
      <svg width={of * 14} height="14" viewBox={`0 0 ${of * 14} 14`} aria-hidden="true">
        {Array.from({ length: of }, (_, n) => (
          <path key={n} d={`M${n * 14 + 7} ${n < at ? 0 : 9}v14`} class={n < at ? 'progress-on' : ''} />
        ))}
      </svg>
      <span class="small soft">{drill.scene(at, of)}</span>
    </span>
  )
}
