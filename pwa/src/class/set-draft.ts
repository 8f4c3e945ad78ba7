import type { ClassPlanned } from '../wire.gen'
import { keep, kept } from './keep'

// A set of scenes that is being built, until it is saved: on the way to Prop and
// back, or when the page is closed, nothing of it is lost.

export interface SetDraft {
  title: string
  scenes: readonly ClassPlanned[]
}

const keyOf = (id = 'new') => `lintel.set.${id}`

export const keptSetDraft = (id: string | undefined): SetDraft | undefined => kept(keyOf(id))

export function keepSetDraft(id: string | undefined, draft: SetDraft | undefined): void {
  keep(keyOf(id), draft)
}
