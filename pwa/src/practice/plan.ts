import type { ItemKind } from '../wire.gen'
import { due, recall, type Memory } from './memory'

// What comes next: which families, in which order. Nothing is scored here.

/** A family as planning sees it. */
export interface Choice {
  id: string
  kind: ItemKind
  lesson: string
}

export interface Want {
  size: number
  now: number
  memory: Memory
  /** A whole number from 0 to n - 1: chance comes from outside. */
  below(n: number): number
  /** How far the cues a family asks for need practice: 1 as any, 2 twice as much. */
  weight?(id: string): number
}

/**
 * The families of a set: those that are due, what is held least first and so what
 * went wrong; new ones; and only then what is still held. No family twice where
 * there are enough. Ties are broken by chance.
 */
export function plan<C extends Choice>(families: readonly C[], want: Want): C[] {
  const left = families.map((family) => ({ family, need: need(family.id, want), tie: want.below(1 << 20) }))
  const chosen: C[] = []
  while (chosen.length < want.size && left.length > 0) {
    const alike = (kind: ItemKind) => chosen.filter((one) => one.kind === kind).length
    const wanted = ({ family, need: own }: (typeof left)[number]) => own - variety * alike(family.kind)
    const next = left.toSorted((a, b) => wanted(b) - wanted(a) || a.tie - b.tie)[0]!
    left.splice(left.indexOf(next), 1)
    chosen.push(next.family)
  }
  if (chosen.length === 0) return []
  return interleave(Array.from({ length: want.size }, (_, n) => chosen[n % chosen.length]!), want.below)
}

// Among families equally needed the kind comes that the set has least of. Chosen
// by us: too little to outweigh what is due.
const variety = 0.05

// The order of need, in steps wide enough that a weak cue (weight up to 2) moves
// a family within its step and over the next, not over all. What went wrong has no
// step of its own: it is held least and so comes early all the same, and a step cost
// one of the models of learners trials and won the other none. Chosen by us; what
// comes of it is measured on simulated learners (sim/).
const never = 2
const timeHasCome = 2

export function need(id: string, { memory, now, weight = () => 1 }: Pick<Want, 'memory' | 'now' | 'weight'>): number {
  const held = recall(memory, id, now)
  const base = held === undefined ? never : 1 - held + (due(memory, id, now) ? timeHasCome : 0)
  return base * weight(id)
}

/** Neighbours differ in kind, and in lesson, as far as the set allows. */
export function interleave<C extends Choice>(chosen: readonly C[], below: (n: number) => number): C[] {
  const left = shuffle(chosen, below)
  const order: C[] = []
  while (left.length > 0) {
    const last = order.at(-1)
    const alike = (one: C) => (last ? Number(one.kind === last.kind) + Number(one.lesson === last.lesson) : 0) - commonness(one, left)
    const next = left.toSorted((a, b) => alike(a) - alike(b))[0]!
    left.splice(left.indexOf(next), 1)
    order.push(next)
  }
  return order
}

/** The kind there is most of goes first among equals, or it would be left over in a row at the end. */
function commonness(one: Choice, left: readonly Choice[]): number {
  return left.filter(({ kind }) => kind === one.kind).length / (left.length + 1)
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
