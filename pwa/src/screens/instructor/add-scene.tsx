import { useState } from 'preact/hooks'
import { randomSeed } from '../../local/random'
import { Button } from '../../ui/button'
import { TextField } from '../../ui/text-field'
import { desk } from '../../words/class-desk'
import { drill } from '../../words/drill'
import { locale } from '../../words/language'
import type { ClassPlanned } from '../../wire.gen'
import type { FamilyInfo } from '../../worker/client'
import { Pick } from './pick'

/** Adds a scene to a set: a family, and a seed of one's own or a new one. */
export function AddScene({ families, add }: { families: readonly FamilyInfo[]; add(scene: ClassPlanned): void }) {
  const [family, setFamily] = useState(families[0]?.id ?? '')
  const [seed, setSeed] = useState('')
  const chosen = families.find(({ id }) => id === family)
  const go = (event: Event) => {
    event.preventDefault()
    add({ family, seed: own(seed) ?? randomSeed(), look_s: 0, note: '' })
    setSeed('')
  }
  const sorted = families.toSorted((a, b) => a.title.localeCompare(b.title, locale))
  return (
    <form class="stack add-scene" onSubmit={go}>
      <h2>{desk.addScene}</h2>
      <Pick label={desk.family} value={family} set={setFamily} choices={sorted.map(({ id, title }) => ({ value: id, name: title }))} />
      {chosen && <p class="small soft">{drill.kinds[chosen.kind]}</p>}
      <TextField label={desk.seed} value={seed} set={setSeed} hint={desk.seedHint} most={16} />
      <Button submit wide>
        {desk.add}
      </Button>
    </form>
  )
}

/** A seed that a person typed: a whole number that survives the crossing to Go. */
function own(typed: string): number | undefined {
  const seed = Number(typed.trim())
  return typed.trim() !== '' && Number.isSafeInteger(seed) && seed >= 0 ? seed : undefined
}
