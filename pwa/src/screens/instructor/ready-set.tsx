import { saveSet } from '../../class/desk'
import { randomBelow, randomSeed } from '../../local/random'
import { Button } from '../../ui/button'
import { desk } from '../../words/class-desk'
import type { ClassPlanned } from '../../wire.gen'
import { engine, type FamilyInfo } from '../../worker/client'
import { useDoing } from './use-loaded'

const tries = 5 // seeds of one family, as a few have no fair scene; chosen by us

/** Who has no set yet need not build one first: a scene of every kind, chosen by chance, is made by one press. */
export function ReadySet({ made }: { made(): void }) {
  const { failed, doing, run } = useDoing()
  const make = async () => {
    await saveSet(undefined, desk.readyTitle, await oneOfEachKind())
    made()
  }
  return (
    <>
      <Button look="main" wide disabled={doing} onClick={() => void run(make)}>
        {doing ? desk.readyMaking : desk.ready}
      </Button>
      <p class="small soft">{desk.readyWhy}</p>
      {failed && <p role="alert">{failed}</p>}
    </>
  )
}

async function oneOfEachKind(): Promise<ClassPlanned[]> {
  const families = await engine.families()
  const scenes: ClassPlanned[] = []
  for (const kind of new Set(families.map((one) => one.kind))) scenes.push(await fairScene(families.filter((one) => one.kind === kind)))
  return scenes
}

/** A scene of one of the families, made once here so that the class is given none that cannot be. */
async function fairScene(families: readonly FamilyInfo[]): Promise<ClassPlanned> {
  const family = families[randomBelow(families.length)]!.id
  let last: unknown
  for (let n = 0; n < tries; n++) {
    const seed = randomSeed()
    try {
      await engine.item(family, seed)
      return { family, seed, look_s: 0, note: '' }
    } catch (error) {
      last = error
    }
  }
  throw last
}
