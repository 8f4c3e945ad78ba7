// A device with no room left: told plainly, the record can be saved as a file,
// and the drill goes on.
import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { test } from 'node:test'
import { answerScene, answerUnsure, begin, eventsOnDevice, onward } from './lib/drill.mjs'
import { prepare, usePhone, useServer } from './lib/ready.mjs'

const server = useServer()
const browser = usePhone({ width: 360, height: 740, motion: 'reduce' })
let devtools
prepare(async () => {
  devtools = await browser.context.newCDPSession(browser.page)
})

// For so long Chromium goes by the room it last saw (seen: a write within it is still taken).
const askedAgainMS = 36_000

const setQuota = (bytes) => devtools.send('Storage.overrideQuotaForOrigin', { origin: server.url, ...(bytes && { quotaSize: bytes }) })

/** Answers all and presses Commit, whatever comes of it. */
const tryToCommit = async (page) => (await answerUnsure(page)).click()

test('with 1 MB and no more it says so, offers the file and goes on', async () => {
  const { page } = browser
  await page.goto(server.url)
  await page.getByText('This device has everything it needs offline.').waitFor({ timeout: 60_000 })
  await page.goto(`${server.url}/drill`)
  await begin(page)
  await answerScene(page)
  assert.equal((await eventsOnDevice(page)).length, 1)
  await onward(page).click()

  await setQuota(1_000_000)
  await page.waitForTimeout(askedAgainMS)
  await tryToCommit(page)
  await page.getByText('This device has no room left to keep your answer.').waitFor()
  assert.equal(await page.getByText('Kept on this device').count(), 0, 'no tick for what is not kept')
  const saving = page.waitForEvent('download')
  await page.getByRole('button', { name: 'Save my record as a file' }).click()
  const saved = JSON.parse(readFileSync(await (await saving).path(), 'utf8'))
  assert.equal(saved.events.length, 1)

  await page.getByRole('button', { name: 'Go on without keeping it' }).click()
  await page.getByText('Not kept: this device has no room left').waitFor()
  await onward(page).click()
  await tryToCommit(page)
  await page.getByText('This device has no room left to keep your answer.').waitFor()
})

test('when there is room again the same answer is kept', async () => {
  const { page } = browser
  await setQuota()
  await page.getByRole('button', { name: 'Commit' }).click()
  await page.getByText('Kept on this device').waitFor()
  const events = await eventsOnDevice(page)
  assert.deepEqual(events.map(({ seq }) => seq), [1, 2])
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
