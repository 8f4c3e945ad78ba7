// A tenth of a second of fire and its read-out, on a processor four times
// slower: six compartments with openings being moved, in Chromium. Prints one
// JSON line for `bench`. Control: a plain loop that takes as long at the median,
// so that its 95th percentile is what slowing the processor adds by itself.
//
//   node pwa/bench/fire-readout.mjs ENGINE.wasm WASM_EXEC.js
import { createServer } from 'node:http'
import { readFileSync } from 'node:fs'
import { chromium } from 'playwright-core'
import { sixRooms } from '../wasm/six-rooms.mjs'

const [enginePath, execPath] = process.argv.slice(2)
const slowdown = 4
const files = {
  '/': ['text/html', '<!doctype html><meta charset=utf-8><title>Read-out</title><script src="/exec.js"></script>'],
  '/exec.js': ['text/javascript', readFileSync(execPath)],
  '/engine.wasm': ['application/wasm', readFileSync(enginePath)],
}
const server = createServer((request, reply) => {
  const file = files[request.url]
  reply.writeHead(file ? 200 : 404, { 'content-type': file?.[0] ?? 'text/plain' }).end(file?.[1])
})
await new Promise((done) => server.listen(0, '127.0.0.1', done))

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
})
const page = await browser.newPage()
const devtools = await page.context().newCDPSession(page)
await page.goto(`http://127.0.0.1:${server.address().port}/`)
await devtools.send('Emulation.setCPUThrottlingRate', { rate: slowdown })

const measured = await page.evaluate(async (scenario) => {
  const go = new globalThis.Go()
  const { instance } = await WebAssembly.instantiateStreaming(fetch('/engine.wasm'), go.importObject)
  void go.run(instance)
  const { run, frameLength } = globalThis.lintel.open(scenario)
  const out = new Float64Array(frameLength)
  const fine = (result) => {
    if (result?.error) throw new Error(JSON.stringify(result.error))
  }
  const timed = async (call) => {
    const took = []
    for (let i = 0; i < 400; i++) {
      const start = performance.now()
      call()
      took.push(performance.now() - start)
      if (i % 20 === 0) await new Promise((done) => setTimeout(done, 0))
    }
    took.sort((a, b) => a - b)
    return { median: took[200], p95: took[380] }
  }
  fine(globalThis.lintel.advance(run, 60, out))
  const ours = await timed(() => fine(globalThis.lintel.advance(run, 0.1, out)))
  let sum = 0
  let turns = 10_000
  const loop = () => {
    for (let i = 0; i < turns; i++) sum = Math.sqrt(sum + i)
  }
  for (let i = 0; i < 6; i++) turns = Math.max(1, Math.round((turns * ours.median) / (await timed(loop)).median))
  const control = await timed(loop)
  return { p95_ms: ours.p95, median_ms: ours.median, control_ms: control.p95, control_median_ms: control.median }
}, sixRooms())
console.log(JSON.stringify(measured))
await browser.close()
server.close()
