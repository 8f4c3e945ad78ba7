// At a site without internet the instructor's laptop serves plain http. Browsers
// give such a page no service worker; everything else must work, and the page
// must say what does not and why.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { answerScene, begin, eventsOnDevice } from './lib/drill.mjs'
import { usePhone, useServer } from './lib/ready.mjs'

const server = useServer()
// A name of the local network, which is no secure origin as 127.0.0.1 is.
const browser = usePhone({ extra: ['--host-resolver-rules=MAP laptop.test 127.0.0.1'] })
const lan = () => server.url.replace('127.0.0.1', 'laptop.test')

test('it says that offline use is off and why', async () => {
  const { page } = browser
  await page.goto(lan())
  await page.getByText('Offline use is off: this page came over plain http').waitFor()
  assert.equal(await page.evaluate(() => isSecureContext), false)
})

test('a scene is drilled, kept and synced all the same', async () => {
  const { page } = browser
  await page.goto(`${lan()}/drill`)
  await begin(page)
  await answerScene(page)
  await page.getByText(/not synced/).waitFor({ state: 'detached' })
  assert.equal((await eventsOnDevice(page)).length, 1)
  assert.equal(server.records().length, 1)
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
