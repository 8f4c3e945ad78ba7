// Counts flashes in the picture of a running fire of every family, at the moment
// at which most flame shows, on the app's own scene, in real time and as fast as
// Prop plays a fire. No place may flash, however small. Two planted strobes, one
// over the whole picture and one over a narrow strip, must be told from it.
// Prints one JSON line, and each family on the error stream; exits with 1 when a family flashes or a strobe is missed.
//
//   node pwa/fidelity/flashes.mjs [-seed N] [-only FAMILY,FAMILY]
import { parseArgs } from 'node:util'
import { decode } from 'fast-png'
import { countFlashes } from './lib/flash.mjs'
import { fine, startEngine } from './lib/states.mjs'
import { openStudio } from './lib/studio.mjs'

const { values: flags } = parseArgs({
  args: process.argv.slice(2).map((arg) => arg.replace(/^-(?=[a-z]{2})/, '--')),
  options: { seed: { type: 'string', default: '1' }, only: { type: 'string' } },
})
const MOST = 3 // WCAG 2.2, SC 2.3.1
const SIZE = { width: 390, height: 459 } // the picture on a phone
const SIDE = 6 // points to a place: a field of 10 degrees has over 2,400 of them
const FRAME_S = 0.1
const FILMED_S = 3
const PLAYED = [1, 16] // times real time: the slowest and the fastest of Prop

const studio = await openStudio({ density: 1 }) // a place is many points wide: finer pixels would only cost time
const { readFrame } = await studio.module('/src/render/frame.ts')
const engine = await startEngine()

/** Frames of a fire from a moment on, ten a second, played so many times as fast. */
function film(item, from, played) {
  const { run, compartments, openings, frameLength } = fine(engine.open(item.scenario))
  if (from > FRAME_S) fine(engine.advance(run, from, new Float64Array(frameLength)))
  const frames = Array.from({ length: Math.round(FILMED_S / FRAME_S) }, () => {
    const values = new Float64Array(frameLength)
    fine(engine.advance(run, FRAME_S * played, values))
    return readFrame(values, compartments.length, openings.length)
  })
  fine(engine.close(run))
  return frames
}

/** When most flame shows in the openings, or, where none ever does, when the fire is largest. */
function brightest(item) {
  const { run, compartments, openings, frameLength } = fine(engine.open(item.scenario))
  let best = { t: item.moment_s, flame: -1 }
  for (let t = 10; t <= Math.min(item.scenario.end_s, 3 * item.moment_s); t += 10) {
    const values = new Float64Array(frameLength)
    fine(engine.advance(run, 10, values))
    const frame = readFrame(values, compartments.length, openings.length)
    const flame = 1000 * frame.openings.reduce((sum, o) => sum + (o.flameKW || 0), 0) + frame.header.hrrKW
    if (flame > best.flame) best = { t, flame }
  }
  fine(engine.close(run))
  return best.t
}

const linear = (byte) => (byte / 255 <= 0.04045 ? byte / 255 / 12.92 : ((byte / 255 + 0.055) / 1.055) ** 2.4) // IEC 61966-2-1

async function flashesOf(take) {
  const { png, width, height, perSecond } = await studio.page.evaluate((one) => globalThis.lintelPlayer.filmWall(one), {
    ...SIZE, near: false, warmS: 2.5, pictures: 0, betweenS: 0, frameS: FRAME_S, side_pt: SIDE, frame: take.frames[0], ...take,
  })
  const { data, channels } = decode(Buffer.from(png, 'base64'))
  const frames = Array.from({ length: data.length / channels / (width * height) }, (_, k) => Float32Array.from({ length: width * height }, (__, p) => {
    const at = channels * (k * width * height + p)
    return 0.2126 * linear(data[at]) + 0.7152 * linear(data[at + 1]) + 0.0722 * linear(data[at + 2])
  }))
  return countFlashes(frames, { width, side: SIDE, perSecond })
}

/** The more of two counts. */
const more = (a, b) => ({ anywhere: Math.max(a.anywhere, b.anywhere), field: Math.max(a.field, b.field) })

const asked = flags.only?.split(',')
const families = {}
let last
for (const family of fine(engine.families()).filter(({ id }) => asked?.includes(id) ?? true)) {
  const item = fine(engine.item(family.id, Number(flags.seed)))
  const from = brightest(item)
  const shown = item.scenario.openings.find(({ id }) => id === item.show[0]) ?? item.scenario.openings[0]
  let worst = { anywhere: 0, field: 0 }
  for (const played of PLAYED) {
    last = { scenario: item.scenario, side: shown.side ?? 'A', opening: shown.id, frames: film(item, from - FRAME_S, played) }
    worst = more(worst, await flashesOf(last))
  }
  families[family.id] = worst
  console.error(`${family.id}: ${worst.anywhere} in one place, ${worst.field} in a field, ${Math.round(performance.now() / 1000)} s`)
}
const strobe = await flashesOf({ ...last, strobe: { hertz: 5, share: 1 } })
const narrow = await flashesOf({ ...last, strobe: { hertz: 5, share: 0.05 } })
await studio.close()

const unknown = (asked ?? []).filter((id) => !(id in families))
if (unknown.length > 0) console.error(`flashes: no family ${unknown.join(', ')}: see content/families`)
const worst = Object.values(families).reduce(more)
const holds = unknown.length === 0 && worst.anywhere <= MOST && strobe.field > MOST && narrow.field <= MOST && narrow.anywhere > MOST
console.log(JSON.stringify({ families: Object.keys(families).length, worst, strobe, narrow, holds, each: families }))
process.exit(holds ? 0 : 1)
