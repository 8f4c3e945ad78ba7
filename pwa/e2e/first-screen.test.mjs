// Home as it comes to a phone, before the app is there: it is read, it stands in
// the theme that was chosen, and a button tapped too early is not lost.
import assert from 'node:assert/strict'
import { after, test } from 'node:test'
import { prepare, usePhone, useServer } from './lib/ready.mjs'

let release
after(() => release?.()) // before the browser is closed
const server = useServer()
const browser = usePhone()

/** Home with the app held back on its way, until it is released. */
async function openHeldBack(page) {
  const held = new Promise((go) => { release = go })
  await page.unrouteAll()
  await page.route('**/assets/*.js', async (route) => {
    await held
    await route.continue()
  })
  await page.goto(server.url, { waitUntil: 'commit' })
}

prepare(() => browser.context.addInitScript(() => { navigator.serviceWorker.register = () => new Promise(() => {}) })) // nothing from a copy

test('Home is read before the app is there, and a button tapped by then does its work', async () => {
  const { page } = browser
  await openHeldBack(page)
  await page.getByRole('heading', { name: 'Start at the opening' }).waitFor()
  await page.getByRole('button', { name: 'Español' }).click()
  await page.waitForTimeout(500)
  assert.equal(await page.getByRole('heading', { name: 'Start at the opening' }).count(), 1, 'nothing can have answered yet')
  release()
  await page.getByRole('heading', { name: 'Empiece por la abertura' }).waitFor()
})

test('who reads Spanish sees no English on the way, and the theme stands before the app does', async () => {
  const { page } = browser
  await page.evaluate(() => localStorage.setItem('lintel.theme', 'outdoor'))
  await openHeldBack(page)
  await page.waitForFunction(() => document.documentElement.dataset.theme === 'outdoor')
  await page.waitForLoadState('domcontentloaded')
  assert.equal(await page.getByRole('heading', { name: 'Start at the opening' }).count(), 0)
  release()
  await page.getByRole('heading', { name: 'Empiece por la abertura' }).waitFor()
  assert.deepEqual(browser.complaints, [])
})
