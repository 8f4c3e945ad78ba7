// Opening states as the fires of the families really make them: families in an
// order of chance, several moments, every outside wall opening that smokes.
import { existsSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { load } from '../../wasm/load.mjs'
import { chance, shuffled } from './chance.mjs'

const wasm = fileURLToPath(new URL('../../src/worker/lintel.wasm', import.meta.url))
const exec = fileURLToPath(new URL('../../src/worker/wasm_exec.js', import.meta.url))

// What counts as an outflow that can be looked at; chosen by us. A shut panel
// leaks along its edge, a crack is narrower than a point of the screen: neither
// has an outlet area to speak of. The instrument goes by the densest fifth of an
// opening, so what leaves by less than that is out of its range; nor can it follow
// what moves in a band of fewer than three rows of its cells, of which it lays
// thirty along the longest side (estimator/motion.mjs), as where a quarter of a
// window smokes that is four times as wide as high. Below the lowest cut of each
// cue in content/scales there is nothing to rate.
const CELLS = 30
const ROWS = 3

/** Least share of an opening that must be in use for the instrument to see how fast. */
export const reach = ({ width_m: widthM, height_m: heightM }) => Math.max(0.2, (ROWS / CELLS) * Math.max(1, widthM / heightM))

const outside = ({ to, side, height_m: heightM }) => to === 'outside' && side && heightM
const smokes = (o) => (o.flow === 2 || o.flow === 3) && o.opticalDepth >= 0.05
const judged = (opening, o) => opening.kind !== 'leak' && o.open >= 0.1 && smokes(o) && outlet(o) >= reach(opening)
const atGap = ({ kind }, o) => kind === 'leak' && smokes(o)

/** Share of the whole opening by which the outflow leaves: what stands open, above the neutral plane. */
export const outlet = ({ open, flow, neutralPlane }) =>
  open * (flow === 2 ? 1 - Math.max(0, neutralPlane || 0) : 1 - Math.max(0, Math.min(1, neutralPlane)))

/** Mean speed of the outflow over the square root of g times the opening's height, as the scale of velocity has it. */
export const froude = (speedMS, heightM) => speedMS / Math.sqrt(9.81 * heightM)

/** The engine, started in this process. */
export function startEngine() {
  if (!existsSync(wasm)) throw new Error(`${wasm} is not built: run go generate ./...`)
  return load(wasm, exec)
}

/**
 * Draws at least so many states, three moments of a fire each, no family again before all others; the seeds follow from one seed.
 * With `gaps` those of gaps count too: an eye can tell them, the instrument cannot.
 */
export async function drawStates(studio, { enough, seed, gaps = false }) {
  const engine = await startEngine()
  const { readFrame } = await studio.module('/src/render/frame.ts')
  const next = chance(seed)
  const states = []
  const families = fine(engine.families())
  while (states.length < enough) {
    for (const family of shuffled(families, next)) {
      if (states.length >= enough) break
      const item = fine(engine.item(family.id, 1_000_000 + Math.floor(next() * 1_000_000_000)))
      states.push(...statesOf(engine, readFrame, item, next, gaps))
    }
  }
  return states
}

function statesOf(engine, readFrame, item, next, gaps) {
  const { scenario } = item
  const { run, compartments, openings, frameLength } = fine(engine.open(scenario))
  const moments = [item.moment_s, item.moment_s * (0.3 + 0.6 * next()), item.moment_s * (1.1 + 0.9 * next())].toSorted((a, b) => a - b)
  const found = []
  let now = 0
  for (const moment of moments) {
    const values = new Float64Array(frameLength)
    fine(engine.advance(run, moment - now, values))
    now = moment
    const frame = readFrame(values, compartments.length, openings.length)
    scenario.openings.forEach((opening, index) => {
      const look = frame.openings[index]
      if (!outside(opening) || !(judged(opening, look) || (gaps && atGap(opening, look)))) return
      found.push({ family: item.family, seed: item.seed, moment, scenario, side: opening.side, opening: opening.id, heightM: opening.height_m, reach: reach(opening), look, frame })
    })
  }
  fine(engine.close(run))
  return found
}

/** What a call of the engine gives, or its complaint thrown. */
export function fine(result) {
  if (result?.error) throw new Error(JSON.stringify(result.error))
  return result
}
