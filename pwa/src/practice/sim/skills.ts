import type { Chance } from '../../local/sim/chance'
import { luck, normal, type Clock, type Learner } from './learner'

// A trainee for whom each family is a skill that one has or has not: knowledge
// tracing (Corbett & Anderson, "Knowledge tracing: modeling the acquisition of
// procedural knowledge", User Modeling and User-Adapted Interaction 4 (1995)
// 253-278), with forgetting from day to day (Qiu, Qi, Lu, Pardos & Heffernan,
// "Does time matter? Modeling the effect of time in Bayesian knowledge tracing",
// Educational Data Mining 2011). Both cited from memory, to be confirmed.
//
// A skill not held is picked up at a practice with a chance of its own; one held
// slips now and then, and is lost overnight now and then; without the skill one
// guesses.
//
// Limits: all or nothing, and no benefit of spacing but that against forgetting.

// Chosen by us, within what is usual for the model: a chance to learn of one in
// six on the whole, differing between families and people by a factor of two;
// one slip in thirty; one skill in two hundred lost a day (a third in
// three months).
const learns = 1 / 6
const differs = Math.log(2)
const slips = 0.03
const losesADay = 0.005

export class SkillLearner implements Learner {
  readonly #chance: Chance
  readonly #learns: number[]
  readonly #held: boolean[]
  readonly #seen: number[]

  /** Answers `start` of all right at first. */
  constructor(chance: Chance, families: number, start: number) {
    this.#chance = chance
    const own = (differs / 2) * normal(chance)
    this.#learns = Array.from({ length: families }, () => Math.min(0.9, learns * Math.exp(own + differs * normal(chance))))
    const holds = Math.round((families * (start - luck)) / (1 - slips - luck))
    const order = this.#learns.map((_, n) => ({ n, by: chance.next() })).toSorted((a, b) => a.by - b.by)
    this.#held = this.#learns.map(() => false)
    for (const { n } of order.slice(0, holds)) this.#held[n] = true
    this.#seen = this.#learns.map(() => 0)
  }

  skill(now: Clock): number {
    return this.#held.reduce((sum, _, family) => sum + this.chanceOf(family, now), 0) / this.#held.length
  }

  chanceOf(family: number, now: Clock): number {
    const still = this.#held[family] ? (1 - losesADay) ** this.#nights(family, now) : 0
    return still * (1 - slips) + (1 - still) * luck
  }

  answer(family: number, now: Clock): boolean {
    if (this.#chance.next() > (1 - losesADay) ** this.#nights(family, now)) this.#held[family] = false
    this.#seen[family] = now.between
    const right = this.#chance.next() < (this.#held[family] ? 1 - slips : luck)
    if (!this.#held[family]) this.#held[family] = this.#chance.next() < this.#learns[family]!
    return right
  }

  #nights(family: number, now: Clock): number {
    return Math.max(0, Math.floor(now.between / 86_400) - Math.floor(this.#seen[family]! / 86_400))
  }
}
