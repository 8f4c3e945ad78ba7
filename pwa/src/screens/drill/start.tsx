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
  const left = set.value && set.value.done.length < set.value.scenes.length ? set.value : undefined
  const open = choosing.value ? undefined : left // a set being begun was not left: nothing makes room for it
  const [size, setSize] = useState<number>(8)
  return (
    <Page title={words.screens.drill.name} aside={<Choosing />}>
      <div class="stack stack-wide">
        <NotValidated />
        <p class="drill-lead">{drill.lead}</p>
      </div>
      {/* What the set left open decides where everything stands: until it is known nothing can be tapped. */}
      <div class="stack stack-wide drill-ways" hidden={!restored.value}>
        {failed.value && <p role="alert">{failed.value}</p>}
        <div class="stack">
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

/** Said beside the title, where it moves nothing. */
function Choosing() {
  return (
    <p class="small soft" role="status">
      {choosing.value && drill.choosing}
    </p>
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
