import type { ClassRef, Reply } from '../wire.gen'
import { keep, kept } from './keep'

// Answers begun and not committed: a reload must not lose them.

export interface Draft {
  replies: Reply[]
  confidence?: number | undefined
}

interface KeptDraft extends Draft {
  at: string
}

const key = 'lintel.class.draft'

const placeOf = ({ id, scene, place }: ClassRef) => `${id} ${scene} ${place}`

export function keepDraft(ref: ClassRef, draft: Draft | undefined): void {
  keep(key, draft && { at: placeOf(ref), ...draft })
}

export function keptDraft(ref: ClassRef): Draft | undefined {
  const draft = kept<KeptDraft>(key)
  return draft?.at === placeOf(ref) ? draft : undefined
}
