// What drawing the smoke costs on a slow phone: script time of each picture of
// the app's own scene with four smoking openings, processor four times slower.
// Control in the same run: the same building with nothing coming out of it.
// Beside it: taps while it draws, how soon it draws coarser when it is late, that
// it stands still while the page is hidden, and whether its memory grows.
// Prints one JSON line for `bench`.
//
//   node pwa/bench/frame-script.mjs [-seconds N] [-heap MINUTES]
//
// With -heap it looks at memory alone, and exits with 1 when it grew.
import { parseArgs } from 'node:util'
import { openStudio } from '../fidelity/lib/studio.mjs'
import { at, noteTaps } from './lib/taps.mjs'

const { values: flags } = parseArgs({
  args: process.argv.slice(2).map((arg) => arg.replace(/^-(?=[a-z]{2})/, '--')),
  options: { seconds: { type: 'string', default: '10' }, heap: { type: 'string', default: '0' } },
})
const SLOWDOWN = 4
const VERY_LATE = 24 // a processor so slow that every picture is late
const WIDTH = 390
const GROWS = 0.05 // of the heap: more than collections scatter by, less than one picture kept every second. Chosen by us.
const seconds = Number(flags.seconds)

const studio = await openStudio()
const { page } = studio
const { emptyFrame } = await studio.module('/src/render/frame.ts')
const { box } = await studio.module('/src/buildings/box.ts')
const devtools = await page.context().newCDPSession(page)
const slow = (rate) => devtools.send('Emulation.setCPUThrottlingRate', { rate })

const smoking = { open: 1, flow: 3, neutralPlane: 0.35, outVelocityMS: 0.8, inVelocityMS: 0.5, outTempC: 250, opticalDepth: 3, lightness: 0.4, churning: 1 }

function frameWith(count) {
  const frame = emptyFrame(box.compartments.length, box.openings.length)
  const ports = box.openings.map((o, k) => (o.side === 'A' && o.to === 'outside' ? k : -1)).filter((k) => k >= 0)
  if (ports.length < count) throw new Error(`the box has ${ports.length} ports on its front, ${count} are needed`)
  for (const k of ports.slice(0, count)) Object.assign(frame.openings[k], smoking)
  return frame
}

const host = (count) => page.evaluate((one) => globalThis.lintelPlayer.host(one), { scenario: box, side: 'A', frame: frameWith(count), width: WIDTH })
const watch = (s) => page.evaluate((time) => globalThis.lintelPlayer.watch(time), s)

async function cost(count) {
  await host(count)
  await page.waitForTimeout(4000) // its head start is behind it
  const took = await watch(seconds)
  return { p95: at(took, 0.95), median: at(took, 0.5), most: at(took, 1), pictures: took.length }
}

async function taps() {
  await host(4)
  await page.waitForTimeout(3000)
  await page.evaluate(noteTaps)
  for (let k = 0; k < 4 * seconds; k++) {
    await page.locator('#tap').click()
    await page.waitForTimeout(150 + 37 * (k % 5)) // never in step with the frames
  }
  const took = await page.evaluate(() => globalThis.lintelTaps)
  return { p98: at(took, 0.98), median: at(took, 0.5), taps: Number(await page.locator('#tap').textContent()), sent: 4 * seconds }
}

/** Seconds from when every picture is late until the smoke is drawn on fewer cells; null where it never was. */
async function coarser() {
  await slow(1)
  await page.evaluate(() => globalThis.lintelPlayer.fineness.begin())
  await host(4)
  await page.waitForTimeout(4000)
  const began = await page.evaluate(() => performance.now())
  await slow(VERY_LATE)
  await page.waitForTimeout(4000)
  await slow(1)
  const made = await page.evaluate(() => globalThis.lintelPlayer.fineness.read())
  // Ground and wall are canvases too, as wide as the picture; the smoke's own are far narrower.
  const films = made.filter(({ columns }) => columns < WIDTH)
  // On a busy machine it may be late, and coarser, from its first picture on.
  const from = films.some((film) => film.at < began && film.columns < films[0].columns) ? films[0].at : began
  const later = films.find((film) => film.at > from && film.columns < films[0].columns)
  return later ? (later.at - from) / 1000 : null
}

async function hidden() {
  await host(4)
  await page.waitForTimeout(2000)
  await page.evaluate(() => { Object.defineProperty(document, 'hidden', { value: true, configurable: true }) })
  await page.waitForTimeout(200)
  const drawn = (await watch(2)).length
  await page.evaluate(() => { delete document.hidden })
  return { drawn, after: (await watch(2)).length }
}

/** Bytes that live after a collection, once a tenth of the time; the first is left out as the page settles. */
async function heap(minutes) {
  await host(4)
  await page.waitForTimeout(5000)
  const used = []
  for (let k = 0; k <= 10; k++) {
    await devtools.send('HeapProfiler.collectGarbage')
    used.push((await devtools.send('Runtime.getHeapUsage')).usedSize)
    if (k < 10) await page.waitForTimeout(minutes * 6000)
  }
  const early = Math.max(...used.slice(1, 4))
  const late = Math.max(...used.slice(-3))
  return { minutes, early_kb: early / 1000, late_kb: late / 1000, grew: late / early - 1 }
}

async function figures() {
  await slow(SLOWDOWN)
  const empty = await cost(0)
  const four = await cost(4)
  const tapped = await taps()
  return { p95_ms: four.p95, control_ms: empty.p95, four, empty, taps: tapped, coarser_s: await coarser(), hidden: await hidden() }
}

const minutes = Number(flags.heap)
const figure = minutes > 0 ? await heap(minutes) : await figures()
console.log(JSON.stringify({ ...figure, complaints: studio.complaints }))
await studio.close()
process.exit(minutes > 0 && figure.grew > GROWS ? 1 : 0)
