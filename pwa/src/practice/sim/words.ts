import type { Chance } from '../../local/sim/chance'
import { luck, normal, type Clock, type Learner } from './learner'

// A trainee for whom families are like word pairs: the activation model of Pavlik & Anderson, "Practice and Forgetting Effects on
// Vocabulary Memory: An Activation-Based Model of the Spacing Effect", Cognitive
// Science 29 (2005) 559-586, https://doi.org/10.1207/s15516709cog0000_14
//
//	m = beta + ln( sum over practices k of age_k ^ -d_k ),  d_k = c * exp(m before k) + a
//	P(known) = 1 / (1 + exp((tau - m) / s))
//
// Practice at a high activation decays faster, which is the spacing effect; time
// between sessions counts h times as much as time within one.
//
// Limits: it was fitted to word pairs, whose answer is the same each time; a
// family of scenes is a skill, never the same twice (skills.ts).

// Fitted values of the paper, FROM MEMORY, to be confirmed.
const a = 0.177
const c = 0.217
const tau = -0.704
const s = 0.255
const h = 0.025

// People and families differ: standard deviations of beta. Chosen by us.
const peopleDiffer = 0.3
const familiesDiffer = 0.5
interface Trace {
  at: Clock
  decay: number
  weight: number
}

export class WordLearner implements Learner {
  readonly #chance: Chance
  readonly #beta: number[]
  readonly #traces: Trace[][]

  /** Knows `start` of all at first, from lessons a week ago that stuck unevenly. */
  constructor(chance: Chance, families: number, start: number) {
    this.#chance = chance
    const own = peopleDiffer * normal(chance)
    this.#beta = Array.from({ length: families }, () => own + familiesDiffer * normal(chance))
    const stuck = this.#beta.map(() => Math.exp(normal(chance)))
    this.#traces = this.#beta.map(() => [])
    const lesson: Clock = { within: 0, between: -7 * 86_400 }
    let [low, high] = [0, 100]
    for (let turn = 0; turn < 40; turn++) {
      const weight = (low + high) / 2
      stuck.forEach((share, n) => (this.#traces[n] = [{ at: lesson, decay: a, weight: weight * share }]))
      if (this.skill({ within: 0, between: 0 }) < start) low = weight
      else high = weight
    }
  }

  /** The share of all families that would be answered right now. */
  skill(now: Clock): number {
    return this.#beta.reduce((sum, _, family) => sum + this.chanceOf(family, now), 0) / this.#beta.length
  }

  chanceOf(family: number, now: Clock): number {
    return luck + (1 - luck) / (1 + Math.exp((tau - this.#activation(family, now)) / s))
  }

  /** Answers, is told why, and is a little wiser. */
  answer(family: number, now: Clock): boolean {
    const right = this.#chance.next() < this.chanceOf(family, now)
    const decay = c * Math.exp(this.#activation(family, now)) + a
    this.#traces[family]!.push({ at: now, decay, weight: 1 })
    return right
  }

  #activation(family: number, now: Clock): number {
    let sum = 0
    for (const { at, decay, weight } of this.#traces[family]!) {
      const age = Math.max(1, now.within - at.within + h * (now.between - at.between))
      sum += weight * age ** -decay
    }
    return this.#beta[family]! + Math.log(sum)
  }
}
