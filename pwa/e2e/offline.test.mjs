// The promise of the app: install once, and everything but a class works with
// the server gone; what was done comes back and arrives exactly once.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { answerScene, eventsOnDevice, setSize, wholeSet } from './lib/drill.mjs'
import { usePhone, useServer } from './lib/ready.mjs'

const server = useServer()
const browser = usePhone()

test('it installs and says when it can be used offline', async () => {
  const { page, context } = browser
  await page.goto(server.url)
  await page.getByText('This device has everything it needs offline.').waitFor({ timeout: 60_000 })
  const devtools = await context.newCDPSession(page)
  const { installabilityErrors } = await devtools.send('Page.getInstallabilityErrors')
  assert.deepEqual(installabilityErrors, [])
  const { errors } = await devtools.send('Page.getAppManifest')
  assert.deepEqual(errors, [])
})

test('with the server dead, pages load, deep links open and a drill is finished', async () => {
  const { page, context } = browser
  await context.setOffline(true)
  await server.kill()
  await page.goto(`${server.url}/field-book/lesson/box-and-house`)
  await page.getByRole('heading', { level: 1, name: 'From the box to the house' }).waitFor()
  await page.goto(`${server.url}/drill`)
  await wholeSet(page)
  await page.getByText(`${setSize} records not synced`).waitFor()
})

test('a drill left in the middle goes on after a reload', async () => {
  const { page } = browser
  await page.getByRole('button', { name: 'Another set' }).click()
  await answerScene(page)
  await page.reload()
  await page.getByRole('button', { name: `Go on with scene 2 of ${setSize}` }).click()
  await answerScene(page)
  assert.equal((await eventsOnDevice(page)).length, setSize + 2)
})

test('a size-up is made, read and saved with the server dead', async () => {
  const { page } = browser
  await page.goto(`${server.url}/size-up`)
  await page.getByRole('button', { name: 'Sketch a house' }).click()
  await page.getByRole('tab', { name: 'Look' }).click()
  await page.getByRole('button', { name: 'Open', exact: true }).click()
  await page.getByRole('button', { name: 'Out above, in below' }).click()
  await page.getByRole('button', { name: /^Neutral plane/ }).click()
  await page.getByRole('slider').press('ArrowDown')
  await page.getByRole('tab', { name: 'Reading' }).click()
  await page.getByText('Model not yet validated').waitFor()
  await page.getByRole('button', { name: 'Save to the Log' }).click()
  await page.getByRole('button', { name: 'Saved on this device' }).waitFor()
  await page.getByText(`${setSize + 3} records not synced`).waitFor()
})

test('when the server is back everything arrives exactly once, in order', async () => {
  const { page, context } = browser
  await server.start()
  await context.setOffline(false)
  await page.getByText(/records? not synced/).waitFor({ state: 'detached', timeout: 60_000 })
  const sent = await eventsOnDevice(page)
  const held = server.records()
  assert.deepEqual(held.map(({ seq }) => seq), Array.from({ length: setSize + 3 }, (_, n) => n + 1))
  assert.deepEqual(held.map(({ id }) => id), sent.map(({ id }) => id))
  assert.deepEqual(held.map(({ kind }) => kind), [...Array(setSize + 2).fill('answer'), 'size_up'])
})

test('syncing again, reloading and being killed once more adds nothing', async () => {
  const { page } = browser
  await server.kill()
  await server.start()
  await page.goto(`${server.url}/log`)
  await page.getByText('Everything here has reached the server.').waitFor()
  assert.equal(server.records().length, setSize + 3)
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
