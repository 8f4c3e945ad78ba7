// What drawing the smoke costs on a slow phone: script time of each picture of
// the app's own scene with four smoking openings, on the thread that draws, and
// what is left of it for the page; both four times slower. Control in the same
// run: the same building with nothing coming out of it. Beside it: every picture
// from the first on, taps while it draws, how soon it draws coarser when it is
// late, and that it stands still while the page is hidden.
// Prints one JSON line for `bench`.
//
//   node pwa/bench/frame-script.mjs [-seconds N]
import { parseArgs } from 'node:util'
import { openStudio } from '../fidelity/lib/studio.mjs'
import { smokingBox } from './lib/smoking-box.mjs'
import { drawingThread, finenessOf, slowThread, watchFineness } from './lib/drawing-thread.mjs'
import { at, noteTaps, tapsOf } from './lib/taps.mjs'

const { values: flags } = parseArgs({
  args: process.argv.slice(2).map((arg) => arg.replace(/^-(?=[a-z]{2})/, '--')),
  options: { seconds: { type: 'string', default: '10' } },
})
const SLOWDOWN = 4
const VERY_LATE = 24 // a processor so slow that every picture is late
const WIDTH = 390
const seconds = Number(flags.seconds)

const studio = await openStudio()
const { page } = studio
const devtools = await page.context().newCDPSession(page)

const host = async (count) => page.evaluate((one) => globalThis.lintelPlayer.host(one), await smokingBox(studio, count, WIDTH))
const watch = (s) => page.evaluate((time) => globalThis.lintelPlayer.watch(time), s)

/** Notes the script time of each frame of the page itself. */
await page.evaluate(() => {
  const frame = requestAnimationFrame
  globalThis.lintelPage = []
  globalThis.requestAnimationFrame = (then) => frame((now) => {
    const began = performance.now()
    then(now)
    globalThis.lintelPage.push(performance.now() - began)
  })
})

/** Script times from the first picture on, and of those after its head start. */
async function cost(count) {
  await host(count)
  const first = await watch(4)
  await page.evaluate(() => { globalThis.lintelPage = [] })
  const took = await watch(seconds)
  const own = await page.evaluate(() => globalThis.lintelPage)
  return {
    p95: at(took, 0.95), median: at(took, 0.5), most: at(took, 1), pictures: took.length, first_p95: at(first, 0.95), first_most: at(first, 1),
    page_p95: at(own, 0.95), page_frames: own.length,
  }
}

async function taps() {
  await host(4)
  await page.waitForTimeout(3000)
  await page.evaluate(noteTaps)
  const { x, y, width, height } = await page.locator('#tap').boundingBox()
  for (let k = 0; k < 4 * seconds; k++) {
    await page.mouse.click(x + width / 2, y + height / 2)
    await page.waitForTimeout(150 + 37 * (k % 5)) // never in step with the frames
  }
  const took = await tapsOf(page)
  return { p98: at(took, 0.98), median: at(took, 0.5), taps: Number(await page.locator('#tap').textContent()), sent: 4 * seconds }
}

/** Seconds from when every picture is late until the smoke is drawn on fewer cells; null where it never was. */
async function coarser() {
  await slowThread(thread, 1)
  await watchFineness(thread)
  await host(4)
  await page.waitForTimeout(4000)
  const began = Date.now()
  await slowThread(thread, VERY_LATE)
  await page.waitForTimeout(4000)
  await slowThread(thread, 1)
  // Ground and wall are canvases too, as wide as the picture; the smoke's own are far narrower.
  const films = (await finenessOf(thread)).filter(({ columns }) => columns < WIDTH)
  // On a busy machine it may be late, and coarser, from its first picture on.
  const from = films.some((film) => film.at < began && film.columns < films[0].columns) ? films[0].at : began
  const later = films.find((film) => film.at > from && film.columns < films[0].columns)
  return later ? (later.at - from) / 1000 : null
}

async function hidden() {
  await host(4)
  await page.waitForTimeout(2000)
  await page.evaluate(() => { Object.defineProperty(document, 'hidden', { value: true, configurable: true }) })
  await page.waitForTimeout(500) // what was drawn before is told of a little later
  const drawn = (await watch(2)).length
  await page.evaluate(() => { delete document.hidden })
  return { drawn, after: (await watch(2)).length }
}

async function figures() {
  const empty = await cost(0)
  const four = await cost(4)
  const tapped = await taps()
  return { p95_ms: four.p95, page_ms: four.page_p95, control_ms: empty.p95, four, empty, taps: tapped, coarser_s: await coarser(), hidden: await hidden() }
}

await host(0)
const thread = await drawingThread(page)
await slowThread(thread, SLOWDOWN)
await devtools.send('Emulation.setCPUThrottlingRate', { rate: SLOWDOWN })
console.log(JSON.stringify({ ...(await figures()), complaints: studio.complaints }))
await studio.close()
