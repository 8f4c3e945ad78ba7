// First paint on a slow phone: 150 ms round trip, 1.6 Mbit/s, processor four
// times slower, empty cache. Prints one JSON line for `bench`.
//
// Control: a page of nothing but text that carries as many bytes as ours moved
// before its largest paint, over the same emulated line, interleaved with ours.
//
//   node pwa/bench/first-paint.mjs http://127.0.0.1:PORT/ [rounds]
import { createServer } from 'node:http'
import { randomBytes } from 'node:crypto'
import { chromium } from 'playwright-core'

const [address, rounds = '11'] = process.argv.slice(2)
const line = { latency: 150, bits: 1.6e6, slowdown: 4 }

const browser = await chromium.launch({
  executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  args: ['--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
})

async function visit(url) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' })
  const page = await context.newPage()
  const devtools = await context.newCDPSession(page)
  await devtools.send('Network.enable')
  await devtools.send('Network.emulateNetworkConditions', {
    offline: false, latency: line.latency, downloadThroughput: line.bits / 8, uploadThroughput: line.bits / 8,
  })
  await devtools.send('Emulation.setCPUThrottlingRate', { rate: line.slowdown })
  const arrivals = []
  let began = 0
  let engineAt = null
  const urls = new Map()
  devtools.on('Network.requestWillBeSent', (e) => {
    urls.set(e.requestId, e.request.url)
    began ||= e.timestamp
  })
  devtools.on('Network.loadingFinished', (e) => arrivals.push({ ms: (e.timestamp - began) * 1000, bytes: e.encodedDataLength }))
  page.on('requestfinished', (request) => {
    if (request.url().includes('.wasm')) engineAt ??= Date.now()
  })
  const start = Date.now()
  await page.goto(url, { waitUntil: 'load' })
  await page.waitForTimeout(2500)
  const paint = await page.evaluate(() => new Promise((done) => {
    let blocked = 0
    let shift = 0
    new PerformanceObserver((list) => { for (const e of list.getEntries()) blocked += Math.max(0, e.duration - 50) }).observe({ type: 'longtask', buffered: true })
    new PerformanceObserver((list) => { for (const e of list.getEntries()) shift += e.value }).observe({ type: 'layout-shift', buffered: true })
    new PerformanceObserver((list) => {
      const largest = list.getEntries().at(-1).startTime
      setTimeout(() => done({ largest, blocked, shift }), 50)
    }).observe({ type: 'largest-contentful-paint', buffered: true })
  }))
  await context.close()
  const bytes = arrivals.filter((a) => a.ms <= paint.largest).reduce((sum, a) => sum + a.bytes, 0)
  return { ...paint, bytes, engineMs: engineAt === null ? null : engineAt - start }
}

function nullPage(bytes) {
  const body = `<!doctype html><meta charset=utf-8><meta name=viewport content="width=device-width"><title>null</title><!--${randomBytes(Math.ceil(bytes * 0.75)).toString('base64')}--><h1>Read the smoke</h1>`
  const server = createServer((_, reply) => reply.writeHead(200, { 'content-type': 'text/html' }).end(body))
  return new Promise((done) => server.listen(0, '127.0.0.1', () => done(server)))
}

const median = (values) => values.toSorted((a, b) => a - b)[Math.floor(values.length / 2)]

const first = await visit(address)
const server = await nullPage(first.bytes)
const control = `http://127.0.0.1:${server.address().port}/`
const ours = []
const nulls = []
for (let i = 0; i < Number(rounds); i++) {
  ours.push(await visit(address))
  nulls.push(await visit(control))
}
const engine = ours.map((v) => v.engineMs).filter((ms) => ms !== null)
console.log(JSON.stringify({
  largest_ms: median(ours.map((v) => v.largest)),
  control_ms: median(nulls.map((v) => v.largest)),
  blocked_ms: median(ours.map((v) => v.blocked)),
  shift: Math.max(...ours.map((v) => v.shift)),
  bytes: median(ours.map((v) => v.bytes)),
  engine_ms: engine.length > 0 ? median(engine) : null,
  rounds: Number(rounds),
}))
server.close()
await browser.close()
