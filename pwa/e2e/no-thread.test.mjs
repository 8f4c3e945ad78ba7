// A browser that lends no canvas to another thread, and one whose drawing thread
// cannot come: the picture moves on the page's own, the swatches too.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { shot, useCrowd, useServer } from './lib/ready.mjs'

const server = useServer()
const browser = useCrowd()
const thread = '**/draw.worker*.js'

const ways = [
  { name: 'with a drawing thread', threads: 1 },
  { name: 'where no canvas can be lent', threads: 0, script: () => delete HTMLCanvasElement.prototype.transferControlToOffscreen },
  { name: 'where the drawing thread does not come', threads: 0, route: thread },
]

for (const { name, threads, script, route } of ways) {
  test(`a fire moves and swatches are drawn ${name}`, async () => {
    const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' })
    context.setDefaultTimeout(60_000)
    if (script) await context.addInitScript(script)
    if (route) await context.route(route, (call) => call.abort())
    const page = await context.newPage()
    await page.goto(`${server.url}/prop`)
    await page.getByRole('button', { name: 'Light it', exact: true }).click()
    for (let times = 0; times < 2; times++) await page.getByRole('button', { name: /as fast as real/ }).first().click()
    await page.waitForFunction(() => /^([1-9]|0:[4-5])/.test(document.querySelector('[role=timer]').textContent)) // it smokes by then
    await movesWithin(page, page.locator('.prop-scene canvas'))
    assert.equal(page.workers().filter((one) => /draw\.worker/.test(one.url())).length, threads)
    await shot(page, `no-thread-${threads}-${route ? 'route' : script ? 'script' : 'both'}`)
    await page.goto(`${server.url}/field-book/scales`)
    await drawnWithin(page, page.locator('canvas').first())
    await context.close()
  })
}

test('swatches that could not be fetched while the server was away are drawn once it is back', async () => {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' })
  context.setDefaultTimeout(60_000)
  const page = await context.newPage()
  const pictures = '**/{draw.worker,players}*.js'
  let refused = 0
  await page.route(pictures, (call) => ++refused && call.abort())
  await page.goto(`${server.url}/field-book/scales`)
  const canvas = page.locator('canvas').first()
  await canvas.waitFor()
  await until(() => refused >= 2, 'neither the thread nor what draws without it was asked for')
  assert.equal(new Set((await pixels(canvas)).split(',')).size, 1, 'nothing is drawn yet')
  await page.unroute(pictures)
  await drawnWithin(page, canvas)
  await context.close()
})

const mostMS = 120_000

/** Of the canvas alone, two looks a second apart differ. */
async function movesWithin(page, canvas) {
  await until(async () => {
    const first = await pixels(canvas)
    await page.waitForTimeout(1000)
    return first !== (await pixels(canvas))
  }, 'the picture stands still')
}

/** The canvas holds more than a few greys. */
async function drawnWithin(page, canvas) {
  await canvas.waitFor()
  await until(async () => new Set((await pixels(canvas)).split(',')).size > 8, 'the swatch is empty')
}

/** Its pixels in words: of a copy, as the canvas may belong to another thread. */
function pixels(canvas) {
  return canvas.evaluate((one) => {
    const copy = new OffscreenCanvas(40, 40)
    const ctx = copy.getContext('2d')
    ctx.drawImage(one, 0, 0, 40, 40)
    return new Uint32Array(ctx.getImageData(0, 0, 40, 40).data.buffer).join()
  })
}

async function until(holds, what) {
  for (const began = Date.now(); Date.now() - began < mostMS; await new Promise((go) => setTimeout(go, 200))) {
    if (await holds()) return
  }
  assert.fail(what)
}
