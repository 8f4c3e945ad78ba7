import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { NotValidated } from '../../ui/not-validated'
import { Page } from '../../ui/page'
import { words } from '../../words/frame'
import { drill } from '../../words/drill'
import { ITEM_KIND_WORDS } from '../../wire.gen'
import { sizes } from './choose'
import { Forms } from './forms'
import { begin, choosing, failed, matching, openScene, restored, set } from './state'

/** Where a set begins: the next one at one press, and what else there is below. */
export function Start() {
  const open = set.value && set.value.done.length < set.value.scenes.length ? set.value : undefined
  const [size, setSize] = useState<number>(8)
  return (
    <Page title={words.screens.drill.name}>
      <div class="stack stack-wide">
        <NotValidated />
        <p class="drill-lead">{drill.lead}</p>
        {failed.value && <p role="alert">{failed.value}</p>}
        {choosing.value && <p role="status">{drill.choosing}</p>}
        <div class="stack" hidden={!restored.value}>
          {open && (
            <Button look="main" wide onClick={() => void openScene()}>
              {drill.resume(open.done.length + 1, open.scenes.length)}
            </Button>
          )}
          <Button look={open ? 'plain' : 'main'} wide disabled={choosing.value} onClick={() => void begin(size as 8)}>
            {drill.begin(size)}
          </Button>
          <Choices<number> label={drill.size} choices={sizes.map((n) => ({ value: n, name: String(n) }))} chosen={size} choose={(n) => setSize(n)} />
        </div>
        <Other />
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
        <Forms />
      </div>
    </Page>
  )
}

/** Three minutes before the shift, and three for whoever is new. */
function Other() {
  return (
    <div class="kinds">
      <div class="stack">
        <Button wide disabled={choosing.value} onClick={() => void begin('pre_shift')}>
          {drill.preShift}
        </Button>
        <p class="small soft">{drill.preShiftWhy}</p>
      </div>
      <div class="stack">
        <Button wide onClick={() => (matching.value = true)}>
          {drill.first}
        </Button>
        <p class="small soft">{drill.firstWhy}</p>
      </div>
    </div>
  )
}
