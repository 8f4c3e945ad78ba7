// Judges the picture: photographs scenes with the real renderer, has the frozen
// instrument recover opacity, speed, lightness and outlet area from the
// photographs alone, and says how that goes with the state. Lying renderers go
// through the same instrument in the same run. Prints one JSON line.
//
//   node pwa/fidelity/picture-truth.mjs [-quick] [-seed N] [-keep FILE] [-floor R]
//
// With -floor it exits with 1 when a correlation falls below R or a liar is not
// found out: a few scenes scatter, so a quick run has a lower floor than the goal.
import { writeFileSync } from 'node:fs'
import { parseArgs } from 'node:util'
import { Eye } from './lib/eye.mjs'
import { LIES } from './lib/lies.mjs'
import { makeScenes, rootOf } from './lib/scenes.mjs'
import { correlations, lowest, sweepReport } from './lib/score.mjs'
import { openStudio, photograph } from './lib/studio.mjs'

const { values: flags } = parseArgs({
  args: process.argv.slice(2).map((arg) => arg.replace(/^-(?=[a-z]{2})/, '--')),
  options: { quick: { type: 'boolean', default: false }, seed: { type: 'string', default: String(Date.now() % 2 ** 31) }, keep: { type: 'string' }, floor: { type: 'string' } },
})

const SIZES = flags.quick
  ? { family: 12, even: 24, bases: 1, seedsEach: 1, lied: 12 }
  : { family: 90, even: 130, bases: 5, seedsEach: 3, lied: 20 }
const GOAL = 0.98
/** A liar whose lowest correlation reaches this has not been found out. Chosen by us: far from the goal. */
const FOUND_OUT = 0.8

const studio = await openStudio()
const eye = new Eye()

/** Draws and measures scenes one after the other; the instrument looks at one while the next is drawn. */
async function measure(scenes, lie) {
  const out = []
  let looking = Promise.resolve()
  for (const one of scenes) {
    const look = lie ? lie(one.take.look, rootOf(one.heightM)) : one.take.look
    const sighting = await photograph(studio, { ...one.take, look })
    const before = looking
    looking = (async () => {
      await before
      const seen = await eye.look(sighting)
      out.push({ ...one, seen: { ...seen, speed: seen.speed / rootOf(one.heightM) } })
    })()
    await before
  }
  await looking
  return out
}

const scenes = await makeScenes(studio, { ...SIZES, seed: Number(flags.seed) })
const measured = await measure(scenes)
const of = (...sets) => measured.filter(({ set }) => sets.includes(set))
const table = correlations(of('family', 'even'))
const sweeps = sweepReport(of('sweep'))
const liars = {}
for (const [name, lie] of Object.entries(LIES)) {
  liars[name] = lowest(correlations(await measure(scenes.filter(({ set }) => set === 'even').slice(0, SIZES.lied), lie)))
}
eye.close()
await studio.close()

if (flags.keep) {
  writeFileSync(flags.keep, JSON.stringify(measured.map(({ take, ...rest }) => ({ ...rest, opening: take.opening, look: take.look }))))
}
const { strays: _, ...swept } = sweeps
const figure = {
  seed: Number(flags.seed), scenes: measured.length, lowest: lowest(table), correlations: table,
  family: correlations(of('family')), sweeps: swept, liars,
  complaints: studio.complaints,
}
const foundOut = Math.max(...Object.values(liars)) < FOUND_OUT
figure.holds = figure.lowest >= GOAL && sweeps.ordered === 1 && sweeps.within === 1 && foundOut && studio.complaints.length === 0
console.log(JSON.stringify(figure))
process.exit(flags.floor && !(figure.lowest >= Number(flags.floor) && foundOut) ? 1 : 0)
