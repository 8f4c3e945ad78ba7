import { useState } from 'preact/hooks'
import { forgetSketch, sketches, type Sketch } from '../../class/sketches'
import { makeItem } from '../../class/with-item'
import { randomSeed } from '../../local/random'
import { openingName } from '../../render'
import { Button } from '../../ui/button'
import { desk } from '../../words/class-desk'
import { drill } from '../../words/drill'
import type { ClassPlanned, ItemKind, Own } from '../../wire.gen'
import { EngineProblem } from '../../worker/client'
import { Pick } from './pick'
import { useDoing } from './use-loaded'

/** What can be asked of a scene that was sketched (quiz.OwnKinds), and of which one must name an opening. */
const kinds = ['read_opening', 'flow_plane', 'nearest_seat', 'call_stage'] as const satisfies readonly ItemKind[]
type Kind = (typeof kinds)[number]
const ofOne = new Set<ItemKind>(['read_opening', 'flow_plane'])

interface AddOwnProps {
  add(scene: ClassPlanned): void
}

/** Adds a moment that was kept in Prop on this device, with the question that goes with it. */
export function AddOwn({ add }: AddOwnProps) {
  const [all, setAll] = useState(sketches)
  const [id, setID] = useState(all[0]?.id)
  const sketch = all.find((one) => one.id === id) ?? all[0]
  const forget = (gone: Sketch) => {
    forgetSketch(gone.id)
    setAll(sketches())
  }
  return (
    <section class="stack add-scene">
      <h2>{desk.ownTitle}</h2>
      {!sketch && (
        <p>
          {desk.ownNone} <a href="/prop">{desk.ownToProp}</a>
        </p>
      )}
      {sketch && (
        <>
          <Pick label={desk.ownSketch} value={sketch.id} set={setID} choices={all.map((one) => ({ value: one.id, name: one.title }))} />
          <Asking key={sketch.id} sketch={sketch} add={add} forget={() => forget(sketch)} />
          <p class="small soft">
            {desk.ownMore} <a href="/prop">{desk.ownToProp}</a>
          </p>
        </>
      )}
    </section>
  )
}

function Asking({ sketch, add, forget }: { sketch: Sketch; add(scene: ClassPlanned): void; forget(): void }) {
  const outer = sketch.scenario.openings.filter(({ to, side }) => to === 'outside' && side)
  const [kind, setKind] = useState<Kind>('read_opening')
  const [opening, setOpening] = useState(outer[0]?.id ?? '')
  const { failed, doing, run } = useDoing(refusal)
  const go = async () => {
    const { title, scenario, moment_s } = sketch
    const own: Own = { title, scenario, moment_s, kind, ...(ofOne.has(kind) && { opening }) }
    const scene = { family: 'own', seed: randomSeed(), own, look_s: 0, note: '' }
    await makeItem(scene)
    add(scene)
  }
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault()
        void run(go)
      }}
    >
      <Pick<Kind> label={desk.ownKind} value={kind} set={setKind} choices={kinds.map((value) => ({ value, name: drill.kinds[value] }))} />
      {ofOne.has(kind) && (
        <Pick label={desk.ownOpening} value={opening} set={setOpening} choices={outer.map((one) => ({ value: one.id, name: openingName(one) }))} />
      )}
      <p class="small soft">{desk.ownWhy}</p>
      {doing && <p role="status">{desk.ownTrying}</p>}
      {failed && <p role="alert">{failed}</p>}
      <Button submit wide disabled={doing}>
        {desk.add}
      </Button>
      <Button look="quiet" onClick={forget}>
        {desk.ownForget}
      </Button>
    </form>
  )
}

/** Why the engine would not make it: the usual reasons in full, any other as the page's language has it. */
function refusal(error: unknown): string | undefined {
  if (!(error instanceof EngineProblem)) return undefined
  return error.where === 'own' ? desk.ownNothing : (desk.ownRefusedAt[error.where] ?? desk.ownRefused(error.message))
}
