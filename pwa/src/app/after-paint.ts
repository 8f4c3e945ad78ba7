import { watchInstall } from '../local/keeping'
import { store } from '../local/store'
import { register } from '../sw/register'

/** Everything the first screen does without: the offline copy, the store, syncing. */
export function start(): void {
  watchInstall()
  store()
    .then(async (opened) => {
      await opened.readOpenDrill()
      const { countDue } = await import('../practice/due')
      await countDue()
    })
    .catch((error: unknown) => console.warn('store:', error))
  if (import.meta.env.PROD) register().catch((error: unknown) => console.warn('offline copy:', error))
}
