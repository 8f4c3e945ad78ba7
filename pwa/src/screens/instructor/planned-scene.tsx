import { randomSeed } from '../../local/random'
import { spoken } from '../../render'
import { Button } from '../../ui/button'
import { TextField } from '../../ui/text-field'
import { desk } from '../../words/class-desk'
import { drill } from '../../words/drill'
import type { ClassPlanned, Own } from '../../wire.gen'
import type { FamilyInfo } from '../../worker/client'
import { titleOf } from './title-of'

interface PlannedSceneProps {
  scenes: readonly ClassPlanned[]
  at: number
  families: readonly FamilyInfo[]
  change(scenes: readonly ClassPlanned[]): void
  see(scene: ClassPlanned): void
}

/** One scene of a set: its order, its seed, its time to look and the instructor's note. */
export function PlannedScene({ scenes, at, families, change, see }: PlannedSceneProps) {
  const scene = scenes[at]!
  const title = titleOf(families, scene)
  const put = (next: Partial<ClassPlanned>) => change(scenes.with(at, { ...scene, ...next }))
  const swap = (by: number) => change(scenes.with(at, scenes[at + by]!).with(at + by, scene))
  return (
    <li class="planned stack">
      <div class="row spread">
        <strong>{desk.numbered(at + 1, title)}</strong>
        <span class="small soft">{scene.own ? sketchedAs(scene.own) : `${desk.seed} ${scene.seed}`}</span>
      </div>
      <div class="planned-fields">
        <TextField label={desk.lookS} type="number" most={1800} value={String(scene.look_s)} set={(s) => put({ look_s: seconds(s) })} />
        <TextField label={desk.note} value={scene.note} set={(note) => put({ note })} most={400} />
      </div>
      <div class="row">
        <Button look="quiet" aria-label={desk.lookNamed(title)} onClick={() => see(scene)}>
          {desk.look}
        </Button>
        {!scene.own && (
          <Button look="quiet" aria-label={desk.otherSeedNamed(title)} onClick={() => put({ seed: randomSeed() })}>
            {desk.otherSeed}
          </Button>
        )}
        <Button look="quiet" disabled={at === 0} aria-label={desk.moveEarlier(title)} onClick={() => swap(-1)}>
          {desk.earlier}
        </Button>
        <Button look="quiet" disabled={at === scenes.length - 1} aria-label={desk.moveLater(title)} onClick={() => swap(1)}>
          {desk.later}
        </Button>
        <Button look="quiet" aria-label={desk.dropNamed(title)} onClick={() => change(scenes.toSpliced(at, 1))}>
          {desk.dropScene}
        </Button>
      </div>
    </li>
  )
}

/** What is asked of a sketched scene, and where. */
function sketchedAs({ kind, opening }: Own): string {
  return desk.ownAs(drill.kinds[kind], opening && spoken(opening))
}

const longest = 1800 // s; the server's own limit

const seconds = (typed: string) => Math.min(longest, Math.max(0, Math.round(Number(typed) || 0)))
