import { Chance } from '../../local/sim/chance'
import { learn, type Memory } from '../memory'
import { plan, type Choice } from '../plan'
import type { Clock, Learner } from './learner'
import { SkillLearner } from './skills'
import { WordLearner } from './words'

// A trainee works through sets until most of all families would be answered
// right, the plan choosing what comes; the same trainee by chance and by rote;
// and by one who sees into the trainee's head and takes what is known worst,
// which no plan can.

export const orders = ['planned', 'random', 'fixed', 'seeing'] as const
export type Order = (typeof orders)[number]

/** The trainees, by the model that they learn by. */
export const models = { skills: SkillLearner, words: WordLearner }
export type Model = keyof typeof models

// Chosen by us: the number of families the app sets out to have, a set before
// and one after each day's shift, scenes of 35 s.
const families = 40
const setSize = 8
const setsADay = [7, 19] as const // o'clock
const sceneS = 35
const start = 0.3
const goal = 0.9
const mostDays = 365

const choices: Choice[] = Array.from({ length: families }, (_, n) => ({ id: String(n), kind: 'read_opening', lesson: String(n) }))

/** Trials until the goal, judged before each day's first set, so after a night's forgetting; NaN where it was not reached. */
export function trialsToGoal(model: Model, seed: number, order: Order): number {
  const chance = new Chance(seed)
  const learner: Learner = new models[model](chance, families, start)
  const choose = chooser(order, chance, learner)
  let [trials, within] = [0, 0]
  for (let day = 0; day < mostDays; day++) {
    for (const hour of setsADay) {
      const begins = (day * 24 + hour) * 3600
      const clock = (): Clock => ({ within, between: begins - within })
      if (hour === setsADay[0] && learner.skill(clock()) >= goal) return trials
      const ids = choose.next(begins * 1000, clock())
      ids.forEach((id, n) => {
        const right = learner.answer(Number(id), clock())
        choose.hear(id, (begins + n * sceneS) * 1000, right)
        within += sceneS
        trials++
      })
    }
  }
  return NaN
}

interface Chooser {
  next(now: number, clock: Clock): string[]
  hear(family: string, t: number, right: boolean): void
}

function chooser(order: Order, chance: Chance, learner: Learner): Chooser {
  const below = (n: number) => chance.below(n)
  const memory: Memory = new Map()
  let turn = 0
  const next = {
    planned: (now: number) => plan(choices, { size: setSize, now, memory, below }).map(({ id }) => id),
    random: () => Array.from({ length: setSize }, () => String(below(families))),
    fixed: () => Array.from({ length: setSize }, () => String(turn++ % families)),
    seeing: (_: number, clock: Clock) =>
      choices
        .map(({ id }) => ({ id, known: learner.chanceOf(Number(id), clock) }))
        .toSorted((one, other) => one.known - other.known)
        .slice(0, setSize)
        .map(({ id }) => id),
  }[order]
  // A wrong answer is off by one to four steps; the plan hears the size, as it does from the app.
  const hear = (family: string, t: number, right: boolean) =>
    learn(memory, { family, t, error: right ? 0 : (1 + below(4)) / 4 })
  return { next, hear }
}
