import { signal } from '@preact/signals'
import { Refused } from '../../class/ask'
import { doorStep, me, signOut, type DoorStep, type Me } from '../../class/desk'
import { say } from '../../class/say'

/** Who is signed in on this page. */
export const who = signal<Me | undefined>(undefined)
/** What stands before signing in, once the server has said so. */
export const step = signal<DoorStep | undefined>(undefined)
export const failed = signal<string | undefined>(undefined)

/** Asks who is signed in and, where nobody is, whether one may sign in here. */
export async function look(): Promise<void> {
  failed.value = undefined
  try {
    who.value = await me().catch((error: unknown) => {
      if (error instanceof Refused && (error.status === 401 || error.status === 403)) return undefined
      throw error
    })
    if (!who.value) step.value = await doorStep()
  } catch (error) {
    failed.value = say(error)
  }
}

export async function out(): Promise<void> {
  await signOut().catch(() => {}) // the page forgets in any case
  who.value = undefined
  await look()
}
