import { Button } from '../../ui/button'
import { useTap } from '../../ui/tap'
import { Choices } from '../../ui/choices'
import { NotValidated } from '../../ui/not-validated'
import { Page } from '../../ui/page'
import { words } from '../../words/frame'
import { drill } from '../../words/drill'
import { ITEM_KIND_WORDS } from '../../wire.gen'
import { sizes } from './choose'
import { Forms } from './forms'
import { begin, choosing, chosenSize, failed, matching, newcomer, openScene, restored, set } from './state'

/** Where a set begins: the next one at one press, and what else there is below. */
export function Start() {
  const left = set.value && set.value.done.length < set.value.scenes.length ? set.value : undefined
  const open = choosing.value ? undefined : left // a set being begun was not left: nothing makes room for it
  const first = newcomer.value && !open
  const resume = useTap(() => void openScene())
  return (
    <Page title={words.screens.drill.name} aside={<Choosing />}>
      <div class="stack stack-wide">
        <NotValidated />
        <p class="drill-lead">{drill.lead}</p>
      </div>
      {/* What the set left open decides where everything stands: until it is known nothing can be tapped. */}
      <div class="stack stack-wide drill-ways" hidden={!restored.value}>
        {failed.value && <p role="alert">{failed.value}</p>}
        {first && <First main />}
        <div class="stack">
          {open && (
            <Button look="main" wide disabled={resume.felt} onClick={() => resume.tap()}>
              {drill.resume(open.done.length + 1, open.scenes.length)}
            </Button>
          )}
          <Begin main={!open && !first} />
          <Choices label={drill.size} choices={sizes.map((n) => ({ value: n, name: String(n) }))} chosen={chosenSize.value} choose={(n) => (chosenSize.value = n)} />
        </div>
        <div class="kinds">
          <PreShift />
          {!first && <First />}
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
        <Forms />
      </div>
    </Page>
  )
}

/** A set of the chosen size. */
function Begin({ main }: { main: boolean }) {
  const { felt, tap } = useTap(() => void begin(chosenSize.value))
  return (
    <Button look={main ? 'main' : 'plain'} wide disabled={choosing.value || felt} onClick={() => tap()}>
      {drill.begin(chosenSize.value)}
    </Button>
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

/** Three minutes before the shift. */
function PreShift() {
  return (
    <div class="stack">
      <Button wide disabled={choosing.value} onClick={() => void begin('pre_shift')}>
        {drill.preShift}
      </Button>
      <p class="small soft">{drill.preShiftWhy}</p>
    </div>
  )
}

/** Three minutes for whoever is new. */
function First({ main = false }: { main?: boolean }) {
  return (
    <div class="stack">
      <Button look={main ? 'main' : 'plain'} wide onClick={() => (matching.value = true)}>
        {drill.first}
      </Button>
      <p class="small soft">{drill.firstWhy}</p>
    </div>
  )
}
