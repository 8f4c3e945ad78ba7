import { signal } from '@preact/signals'
import type { ClassPlaceView } from '../wire.gen'
import { keep, kept } from './keep'
import type { Heard } from './use-live'

// What this phone remembers of the class it is in, so that a reload, a call or
// an empty battery brings it back to where it was. Answers are not in here: they
// are events in the device's own history.

/** How one joins: by the token of the code that a camera reads, or by eight characters. */
export type Way = { token: string } | { code: string }

export interface Membership {
  id: string
  /** The versions that the class runs on. */
  engine: string
  content: string
  way: Way
  places: ClassPlaceView[]
}

const key = 'lintel.class'
const heardKey = 'lintel.class.heard'

/** The class that this phone is in. */
export const membership = signal<Membership | undefined>(kept(key))

export function remember(next: Membership | undefined): void {
  if (next?.id !== membership.value?.id) keep(heardKey, undefined)
  membership.value = next
  keep(key, next)
}

/** The last that was heard of the class: a reload begins with it, even with no server. */
export function keepHeard(heard: Heard): void {
  keep(heardKey, heard)
}

export function keptHeard(): Heard | undefined {
  return kept(heardKey)
}
