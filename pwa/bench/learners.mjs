// Simulated trainees from 30 % right to 90 %: how many trials planned practice
// (src/practice) needs over how many a random order and a fixed order need.
//
//   node pwa/bench/learners.mjs [LEARNERS] [FIRST SEED]
//
// Two published models of learning, of skills and of word pairs, neither of them
// the plan's own. Beside them, as the least that is to be had: one who sees into
// the trainee's head.
import { load } from './lib/load.mjs'

const learners = Number(process.argv[2] ?? 1000)
const first = Number(process.argv[3] ?? 1)
const { trialsToGoal, orders, models } = await load('src/practice/sim/course.ts')

const told = { learners, models: {} }
for (const model of Object.keys(models)) told.models[model] = course(model)
console.log(JSON.stringify(told))

/** Mean trials by each order, and what share of the random order's the others need. */
function course(model) {
  const runs = []
  for (let seed = first; seed < first + learners; seed++) {
    runs.push(Object.fromEntries(orders.map((order) => [order, trialsToGoal(model, seed, order)])))
  }
  const finished = runs.filter((run) => Object.values(run).every(Number.isFinite))
  const mean = (order) => finished.reduce((sum, run) => sum + run[order], 0) / finished.length
  const trials = Object.fromEntries(orders.map((order) => [order, mean(order)]))
  const shares = finished.map(({ planned, random }) => planned / random).toSorted((a, b) => a - b)
  return {
    unfinished: learners - finished.length,
    trials,
    ratio: trials.planned / trials.random,
    ratio_fixed: trials.fixed / trials.random,
    ratio_seeing: trials.seeing / trials.random,
    worst_tenth: shares[Math.floor(shares.length * 0.9)],
  }
}
