// Whether the memory of a running picture grows while its scenes change: what
// lives after a collection, on the page and on the thread that draws, once a
// tenth of the time, with four openings smoking. Control in the same run: the
// same pictures beside a planted leak, which must be seen to grow. Prints one
// JSON line for `bench`; exits with 1 when it grew, or the leak was not seen,
// unless -judge leaves that to who reads it.
//
//   node pwa/bench/picture-heap.mjs [-minutes N] [-judge]
import { parseArgs } from 'node:util'
import { openStudio } from '../fidelity/lib/studio.mjs'
import { drawingThread } from './lib/drawing-thread.mjs'
import { smokingBox } from './lib/smoking-box.mjs'

const { values: flags } = parseArgs({
  args: process.argv.slice(2).map((arg) => arg.replace(/^-(?=[a-z]{2})/, '--')),
  options: { minutes: { type: 'string', default: '3' }, judge: { type: 'boolean', default: false } },
})
const minutes = Number(flags.minutes)
const PARTS = 10
const SCENE_MS = 15_000 // how long each scene shows, or less where a part of the time has no room for all. Chosen by us.
const GROWS = 0.05 // of what lives: more than collections scatter by. Chosen by us.

const studio = await openStudio()
/** The last is the one that is looked into, so that like is held against like. */
const scenes = [await smokingBox(studio, 2, 340), await smokingBox(studio, 0), await smokingBox(studio, 3, 360), await smokingBox(studio, 4)]

/** Keeps ten frames of the fire a second, as a history would that nobody cuts. */
function plantLeak(frame) {
  globalThis.kept = []
  setInterval(() => globalThis.kept.push(structuredClone(frame)), 100)
}

/** A picture that runs in a browser process of its own, with what lives in it by then. */
async function open(leak) {
  const context = await studio.page.context().browser().newContext({ viewport: { width: 390, height: 844 } })
  const page = await context.newPage()
  await page.goto(studio.page.url(), { timeout: 120_000 }) // a busy machine takes its time
  await page.waitForFunction('globalThis.lintelPlayer !== undefined', undefined, { timeout: 60_000 })
  const host = (scene) => page.evaluate((one) => globalThis.lintelPlayer.host(one), scene)
  await host(scenes.at(-1))
  if (leak) await page.evaluate(plantLeak, scenes.at(-1).frame)
  const devtools = await context.newCDPSession(page)
  const used = []
  const both = [(method) => devtools.send(method), await askThread(page, devtools)]
  return {
    page, used, host,
    async note() {
      let sum = 0
      for (const ask of both) sum += await lives(ask)
      used.push(sum)
    },
  }
}

async function lives(ask) {
  await ask('HeapProfiler.collectGarbage')
  const { usedSize, embedderHeapUsedSize = 0, backingStorageSize = 0 } = await ask('Runtime.getHeapUsage')
  return usedSize + embedderHeapUsedSize + backingStorageSize
}

/** A way to ask the thread that draws what one asks a page. */
async function askThread(page, devtools) {
  await drawingThread(page)
  const attached = new Promise((done) => { devtools.once('Target.attachedToTarget', ({ sessionId }) => done(sessionId)) })
  await devtools.send('Target.setAutoAttach', { autoAttach: true, waitForDebuggerOnStart: false, flatten: false })
  const sessionId = await attached
  const waiting = new Map()
  devtools.on('Target.receivedMessageFromTarget', ({ message }) => {
    const { id, result } = JSON.parse(message)
    waiting.get(id)?.(result)
  })
  let last = 0
  return (method) => new Promise((done, failed) => {
    waiting.set(++last, done)
    devtools.send('Target.sendMessageToTarget', { sessionId, message: JSON.stringify({ id: last, method }) }).catch(failed)
  })
}

/** Shows the scenes in turn for so long, and ends with the last of them. */
async function play(ms) {
  const rounds = Math.max(1, Math.floor(ms / (SCENE_MS * scenes.length)))
  for (let k = 0; k < rounds * scenes.length; k++) {
    for (const one of both) await one.host(scenes[k % scenes.length])
    await both[0].page.waitForTimeout(ms / (rounds * scenes.length))
    shown++
  }
}

/** Most that lived early, and late; the first is left out as the page settles. */
function grown({ used }) {
  const early = Math.max(...used.slice(1, 4))
  const late = Math.max(...used.slice(-3))
  return { early_kb: early / 1000, late_kb: late / 1000, grew: late / early - 1 }
}

const both = [await open(false), await open(true)]
let shown = 0
await both[0].page.waitForTimeout(5000)
for (let k = 0; k <= PARTS; k++) {
  for (const one of both) await one.note()
  if (k < PARTS) await play((minutes * 60_000) / PARTS)
}
const drawn = (await both[0].page.evaluate(() => globalThis.lintelPlayer.watch(2))).length
const [ours, leak] = both.map(grown)
const holds = drawn > 0 && ours.grew <= GROWS && leak.grew > GROWS
console.log(JSON.stringify({ minutes, scenes: shown, ...ours, leak_grew: leak.grew, drawn, holds }))
await studio.close()
process.exit(holds || flags.judge ? 0 : 1)
