import { saveSet } from '../../class/desk'
import { randomBelow, randomSeed } from '../../local/random'
import { firstFair } from '../../practice/fair'
import { Button } from '../../ui/button'
import { desk } from '../../words/class-desk'
import type { ClassPlanned } from '../../wire.gen'
import { engine, type FamilyInfo } from '../../worker/client'
import { useDoing } from './use-loaded'

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
  const draw = () => ({ family: families[randomBelow(families.length)]!.id, seed: randomSeed() })
  const { family, seed } = await firstFair(draw(), (scene) => engine.item(scene.family, scene.seed), draw)
  return { family, seed, look_s: 0, note: '' }
}
