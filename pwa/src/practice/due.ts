import { dueNow } from '../local/status'
import { store } from '../local/store'
import { due, remember } from './memory'
import { answersOf, trialsOf } from './record'

/** Counts the families that want to be seen again now, for Home. */
export async function countDue(now = Date.now()): Promise<void> {
  const { journal } = await store()
  const memory = remember(trialsOf(answersOf(await journal.events())))
  dueNow.value = [...memory.keys()].filter((family) => due(memory, family, now)).length
}
