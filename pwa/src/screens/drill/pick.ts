import type { ItemKind } from '../../wire.gen'
import type { FamilyInfo } from '../../worker/protocol'

/** One scene of a set: a family and a seed say everything about it. */
export interface Scene {
  family: string
  seed: number
}

/** How many scenes make a set. */
export const setSize = 5

/**
 * Chooses the scenes of a set: each kind of item once before any comes twice,
 * each family once before any comes twice, in mixed order. Chance comes from
 * outside: below(n) is a whole number from 0 to n - 1.
 */
export function pickSet(families: readonly FamilyInfo[], below: (n: number) => number, seed: () => number): Scene[] {
  if (families.length === 0) return []
  const picked: FamilyInfo[] = []
  while (picked.length < setSize) {
    const fewest = least(families, (one) => picked.filter((other) => other.id === one.id).length)
    const rarest = least(fewest, (one) => count(picked, one.kind))
    picked.push(rarest[below(rarest.length)]!)
  }
  return shuffle(picked, below).map(({ id }) => ({ family: id, seed: seed() }))
}

const count = (picked: readonly FamilyInfo[], kind: ItemKind) => picked.filter((one) => one.kind === kind).length

/** All of those for which the measure is smallest. */
function least<T>(list: readonly T[], measure: (one: T) => number): T[] {
  const smallest = Math.min(...list.map(measure))
  return list.filter((one) => measure(one) === smallest)
}

/** Fisher and Yates's shuffle (Knuth, The Art of Computer Programming vol. 2, algorithm P; from memory). */
function shuffle<T>(list: readonly T[], below: (n: number) => number): T[] {
  const mixed = [...list]
  for (let last = mixed.length - 1; last > 0; last--) {
    const other = below(last + 1)
    ;[mixed[last], mixed[other]] = [mixed[other]!, mixed[last]!]
  }
  return mixed
}
