// A browser that keeps nothing, as a private window may, and one where the engine
// cannot come: no screen is blank, each says what is the matter, and what needs
// neither still works.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { useCrowd, useServer } from './lib/ready.mjs'

const server = useServer()
const browser = useCrowd()

/** A page whose script runs before any of ours; what it throws is gathered. */
async function open(script, route) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, serviceWorkers: 'block' })
  context.setDefaultTimeout(60_000)
  if (script) await context.addInitScript(script)
  if (route) await context.route(route, (call) => call.abort())
  return context.newPage()
}

const refuseStorage = () => Object.defineProperty(window, 'indexedDB', { get: () => undefined })

test('with no store a size-up is made, and is said not to be kept', async () => {
  const page = await open(refuseStorage)
  await page.goto(`${server.url}/size-up`)
  await page.getByText('This browser keeps nothing').waitFor()
  await page.getByRole('button', { name: /^Small box/ }).click()
  for (const name of ['Open', 'Out above, in below']) await page.locator('.choice').filter({ hasText: name }).first().click()
  await page.getByRole('tab', { name: 'Reading' }).click()
  await page.getByRole('button', { name: 'Save to the Log' }).click()
  await page.getByText('Not saved').waitFor()
  await page.getByRole('button', { name: 'Share as a report' }).click()
  const report = await page.getByRole('textbox', { name: 'Initial radio report' }).inputValue()
  assert.match(report, /^TRAINING, NOT AN INCIDENT\n/)
  const [picture] = await Promise.all([page.waitForEvent('download'), page.getByRole('button', { name: 'As a picture' }).click()])
  assert.equal(picture.suggestedFilename(), 'lintel-size-up.png')
  await page.context().close()
})

test('with no store the Log and a burn say so, and neither is blank', async () => {
  const page = await open(refuseStorage)
  await page.goto(`${server.url}/log`)
  await page.getByText('There is no record in this browser').waitFor()
  await page.goto(`${server.url}/prop/burning`)
  await page.getByText('No burn can be logged here').waitFor()
  await page.context().close()
})

test('with a store none of this is said', async () => {
  const page = await open()
  await page.goto(`${server.url}/log`)
  await page.getByText('Nothing here yet').waitFor()
  assert.equal(await page.getByText('keeps nothing').count(), 0)
  await page.context().close()
})

test('where the engine cannot come, Prop says so in words and offers another try', async () => {
  const page = await open(undefined, /\.wasm$/)
  await page.goto(`${server.url}/prop`)
  await page.getByText('The engine is not on this device yet').waitFor()
  assert.equal(await page.getByText('TypeError').count(), 0)
  await page.context().unroute(/\.wasm$/)
  await page.getByRole('button', { name: 'Try again' }).click()
  await page.getByRole('button', { name: 'Light it', exact: true }).waitFor()
  await page.context().close()
})
