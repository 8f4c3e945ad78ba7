import { randomBelow, randomSeed } from '../../local/random'
import { store } from '../../local/store'
import { remember } from '../../practice/memory'
import { contrastFor, preShiftSize, weigh, weighPairs } from '../../practice/lean'
import { plan } from '../../practice/plan'
import { progressOf } from '../../practice/progress'
import { answersOf, skillsByFamily, trialsOf } from '../../practice/record'
import type { FamilyInfo } from '../../worker/client'
import { engine } from '../../worker/client'
import type { Progress, Scene } from '../../wire.gen'

const nothing: Pick<Progress, 'skills' | 'families' | 'confusions' | 'median_took_s'> = { skills: [], families: [], confusions: [], median_took_s: null }

/** How many scenes a set may have; design: five to ten. */
export const sizes = [5, 8, 10] as const
export type Size = (typeof sizes)[number] | 'pre_shift'

/** The scenes of a set: what one's own record and the time since say is next. */
export async function chooseScenes(size: Size, families?: readonly FamilyInfo[]): Promise<Scene[]> {
  const all = families ?? (await engine.families())
  const { journal } = await store()
  const answers = answersOf(await journal.events())
  // Where the record cannot be added up, memory alone decides: the drill goes on.
  const progress = await progressOf(answers).catch(() => nothing)
  const skills = skillsByFamily(answers)
  const pairsOf = new Map(all.map(({ id, pairs }) => [id, pairs]))
  const chosen = plan(all, {
    size: size === 'pre_shift' ? preShiftSize(progress.median_took_s) : size,
    now: Date.now(),
    memory: remember(trialsOf(answers)),
    below: randomBelow,
    weight: (id) => weigh(id, skills.get(id), progress) * weighPairs(pairsOf.get(id) ?? [], progress.confusions),
  })
  return chosen.map(({ id, pairs }) => {
    const contrast = contrastFor(pairs, progress.confusions, randomBelow)
    return { family: id, seed: randomSeed(), ...(contrast && { contrast }) }
  })
}
