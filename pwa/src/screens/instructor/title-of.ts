import type { ClassPlanned } from '../../wire.gen'
import type { FamilyInfo } from '../../worker/client'

/** What a planned scene is called: its own title, or that of its family. */
export function titleOf(families: readonly FamilyInfo[], { family, own }: Pick<ClassPlanned, 'family' | 'own'>): string {
  return own?.title ?? families.find(({ id }) => id === family)?.title ?? family
}
