// Ten new versions of the app, one after the other, each arriving while an item is
// open: none interrupts it, each is taken at a press between two items, and the
// set and its record go through all ten.
import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { createServer } from 'node:http'
import { extname, join } from 'node:path'
import { after, before, test } from 'node:test'
import { fileURLToPath } from 'node:url'
import { openBrowser } from './lib/browser.mjs'
import { answerScene, eventsOnDevice, onward, sceneReady } from './lib/drill.mjs'

const versions = 10
const dist = fileURLToPath(new URL('../site/dist', import.meta.url))
const types = { '.html': 'text/html', '.js': 'text/javascript', '.css': 'text/css', '.wasm': 'application/wasm', '.svg': 'image/svg+xml', '.png': 'image/png', '.webmanifest': 'application/manifest+json' }

let version = 0
let site
let browser

/** The built app under a version number: it stands in the page, and in what the service worker compares. */
function fileOf(path) {
  const name = path === '/' ? '/index.html' : path
  const body = readFileSync(join(dist, extname(name) ? name : '/shell.html'))
  if (name === '/sw.js') return String(body).replace(/(url:"(?:shell|index)\.html",revision:")[^"]+/g, `$1v${version}`)
  if ((extname(name) || '.html') === '.html') return String(body).replace('</head>', `<meta name="build" content="${version}"></head>`)
  return body
}

before(async () => {
  site = createServer((request, response) => {
    const { pathname } = new URL(request.url, 'http://site')
    if (pathname.startsWith('/api/')) return response.writeHead(503).end()
    try {
      const body = fileOf(pathname)
      return response.writeHead(200, { 'content-type': types[extname(pathname)] ?? 'text/html', 'cache-control': 'no-cache' }).end(body)
    } catch {
      return response.writeHead(404).end()
    }
  })
  await new Promise((resolve) => site.listen(0, '127.0.0.1', resolve))
  browser = await openBrowser()
})
after(async () => {
  await browser?.close()
  site.closeAllConnections()
  site.close()
})

const buildShown = (page) => page.locator('meta[name=build]').getAttribute('content')

/** The browser looks for a newer version, as it does by itself now and then, and has it ready. */
async function arrive(page) {
  await page.evaluate(() => navigator.serviceWorker.getRegistration().then((found) => found.update()))
  await page.waitForFunction(async () => Boolean((await navigator.serviceWorker.getRegistration()).waiting), undefined, { timeout: 60_000 })
}

test('ten updates in a row, none in the middle of an item', async () => {
  const { page } = browser
  const offered = page.getByRole('button', { name: 'Use it now' })
  await page.goto(`http://127.0.0.1:${site.address().port}/`)
  await page.getByText('This device has everything it needs offline.').waitFor({ timeout: 60_000 })
  await page.getByRole('link', { name: /^Next for you/ }).click()
  await page.getByRole('button', { name: String(versions), exact: true }).click()
  await page.getByRole('button', { name: `Begin a set of ${versions}` }).click()
  for (let n = 1; n <= versions; n++) {
    await sceneReady(page)
    const asked = await page.locator('.item-question').textContent()
    version = n
    await arrive(page)
    await page.waitForTimeout(300)
    assert.equal(await offered.count(), 0, 'nothing is offered while an item is open')
    assert.equal(await buildShown(page), String(n - 1))
    assert.equal(await page.locator('.item-question').textContent(), asked)
    await answerScene(page)
    await Promise.all([page.waitForEvent('load'), offered.click()])
    assert.equal(await buildShown(page), String(n))
    assert.equal((await eventsOnDevice(page)).length, n)
    if (n < versions) await page.getByRole('button', { name: `Go on with scene ${n + 1} of ${versions}` }).click()
  }
  assert.equal(await onward(page).count(), 0)
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
