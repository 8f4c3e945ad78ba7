// Whether someone who asked for reduced motion can still read the smoke: from one
// still alone the frozen instrument recovers opacity, lightness and outlet area,
// and the arrow drawn beside the opening gives the speed. Prints one JSON line.
//
//   node pwa/fidelity/stills.mjs [-scenes N] [-seed N] [-keep FILE] [-floor R]
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import { estimate } from './estimator/index.mjs'
import { arrowSpeed } from './lib/arrow.mjs'
import { makeScenes, rootOf } from './lib/scenes.mjs'
import { correlations, lowest } from './lib/score.mjs'
import { openStudio, photograph } from './lib/studio.mjs'

const { values: flags } = parseArgs({
  args: process.argv.slice(2).map((arg) => arg.replace(/^-(?=[a-z]{2})/, '--')),
  options: { scenes: { type: 'string', default: '24' }, seed: { type: 'string', default: String(Date.now() % 2 ** 31) }, keep: { type: 'string' }, floor: { type: 'string' } },
})
const SIZE = { width: 390, height: 459 }
const GOAL = 0.98

const studio = await openStudio()
const { emptyFrame } = await studio.module('/src/render/frame.ts')
const scenes = await makeScenes(studio, { family: 0, even: Number(flags.scenes), bases: 0, seed: Number(flags.seed) })

/** The speed that the arrow shows on a still of the whole scene. */
async function shownSpeed({ take }) {
  const { scenario, side, opening } = take
  const frame = emptyFrame(scenario.compartments.length, scenario.openings.length)
  Object.assign(frame.openings[scenario.openings.findIndex(({ id }) => id === opening)], take.look)
  const wall = { ...SIZE, scenario, side, opening, frame, near: false, inStills: true, warmS: 1, pictures: 1, betweenS: 0 }
  const [png] = await studio.page.evaluate((one) => globalThis.lintelPlayer.drawWall(one), wall)
  const where = await studio.page.evaluate((one) => globalThis.lintelPlayer.whereOnWall(one), wall)
  const path = join(studio.folder, 'wall.png')
  writeFileSync(path, Buffer.from(png, 'base64'))
  return arrowSpeed(path, where.opening, where.metresPerPixel)
}

const read = []
for (const scene of scenes) {
  const still = estimate(await photograph(studio, { ...scene.take, frames: 1 }))
  read.push({ ...scene, seen: { ...still, speed: (await shownSpeed(scene)) / rootOf(scene.heightM) } })
}
const table = correlations(read)
console.log(JSON.stringify({ seed: Number(flags.seed), scenes: read.length, lowest: lowest(table), correlations: table, holds: lowest(table) >= GOAL, complaints: studio.complaints }))
if (flags.keep) writeFileSync(flags.keep, JSON.stringify(read.map(({ take, ...rest }) => ({ ...rest, opening: take.opening }))))
await studio.close()
process.exit(flags.floor && !(lowest(table) >= Number(flags.floor)) ? 1 : 0)
