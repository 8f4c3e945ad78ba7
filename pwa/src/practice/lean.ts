import type { Confusion, Contrast, Progress, Skill } from '../wire.gen'

// How one's own record leans the plan: to weak cues, to scenes of the right
// difficulty, and to the pairs that one takes for one another.

// A skill that fails wholly counts twice, one that never fails once. Chosen by us.
const mostForWeakness = 2
// Practice is best where about three in four come right, between boredom and
// guessing. Chosen by us (0.7 to 0.85 is common practice, no source).
const bestShare = 0.75
const leastForMisfit = 0.6 // of the weight of a family that is far too hard or too easy; chosen by us

/** How much more a family is wanted than by memory alone. */
export function weigh(id: string, skills: ReadonlySet<Skill> | undefined, progress: Pick<Progress, 'skills' | 'families'>): number {
  const own = progress.skills.filter(({ skill }) => skills?.has(skill))
  if (own.length === 0) return 1
  const error = own.reduce((sum, { recent }) => sum + recent, 0) / own.length
  const weak = Math.min(mostForWeakness, 1 + 2 * error)
  const ability = own.reduce((sum, one) => sum + one.ability, 0) / own.length
  const difficulty = progress.families.find(({ family }) => family === id)?.difficulty
  return difficulty === undefined ? weak : weak * fit(ability - difficulty)
}

/** 1 where the family is as hard as is good, less the further it is from that (Rasch 1960: share right from the difference in logits). */
function fit(logits: number): number {
  const share = 1 / (1 + Math.exp(-logits))
  return 1 - (1 - leastForMisfit) * Math.min(1, Math.abs(share - bestShare) / bestShare)
}

/**
 * A pair to tell apart, of those that a family can show: the more often the more
 * it was confused; undefined where none of them was.
 */
export function contrastFor(pairs: readonly Contrast[], confusions: readonly Confusion[], below: (n: number) => number): Contrast | undefined {
  const own = confusions.filter(({ contrast }) => pairs.some((pair) => spell(pair) === spell(contrast)))
  let left = below(Math.max(1, confused(own)))
  return own.find(({ n }) => (left -= n) < 0)?.contrast
}

/** A pair that was confused comes as often as a skill that fails. */
export function weighPairs(pairs: readonly Contrast[], confusions: readonly Confusion[]): number {
  return confusions.some(({ contrast }) => pairs.some((pair) => spell(pair) === spell(contrast))) ? mostForWeakness : 1
}

const confused = (list: readonly Confusion[]) => list.reduce((sum, { n }) => sum + n, 0)

/** The same for two pairs that set the same apart, in whatever order. */
function spell({ stages, regimes, flows, cue, levels }: Contrast): string {
  return [cue ?? '', ...[...(stages ?? []), ...(regimes ?? []), ...(flows ?? []), ...(levels ?? [])].toSorted()].join(' ')
}

// What a scene costs beside answering: being made, looked at, explained. Chosen by us.
const besideS = 15
const preShiftS = 180

/** How many scenes fill three minutes for someone who takes so long over one. */
export function preShiftSize(medianTookS: number | null): number {
  return Math.max(3, Math.min(6, Math.floor(preShiftS / ((medianTookS ?? 30) + besideS))))
}
