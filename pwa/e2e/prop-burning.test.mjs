// A live burn of the box: signed before the log starts, logged by thumb, still
// there after a reload, gone through afterwards with the simulated box beside it.
// SHOTS=folder keeps a picture of each step.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { checkScreen } from './lib/check.mjs'
import { eventsOnDevice } from './lib/drill.mjs'
import { prepare, shot, usePhone, useServer } from './lib/ready.mjs'

const server = useServer()
const began = Date.now()
const browser = usePhone()
let page
prepare(async () => {
  page = browser.page
  await page.goto(`${server.url}/prop/burning`)
})

const press = (name) => page.getByRole('button', { name, exact: true }).first().click()
const notes = async () => (await eventsOnDevice(page)).filter(({ kind }) => kind === 'note').map(({ body }) => body)
const look = async (name) => {
  await shot(page, `burning-${name}`)
  await checkScreen(page, name)
}

test('nothing is logged before every point is settled and the list is signed', async () => {
  const start = page.getByRole('button', { name: 'Sign and start the log' })
  await start.click()
  await page.getByText('10 points are open.').waitFor()
  for (const box of await page.getByRole('checkbox').all()) await box.check()
  await start.click()
  await page.getByText('A call sign and a stop word are missing.').waitFor()
  assert.deepEqual(await notes(), [])
  await page.getByText('This is not permission to burn; the instructor-in-charge decides and anyone may stop.').waitFor()
  await page.getByLabel('Stop word', { exact: true }).fill('Harbour')
  await page.getByLabel(/Signed by/).fill('Marsh 2')
  await look('before')
  await start.click()
  await page.getByRole('timer').waitFor()
  const [begin] = await notes()
  assert.equal(begin.what, 'begin')
  assert.deepEqual([begin.signed, begin.stop_word, begin.checks.length], ['Marsh 2', 'Harbour', 10])
})

test('stop is the first key, in sight without scrolling', async () => {
  const stop = await page.getByRole('button', { name: 'Stop called' }).boundingBox()
  const first = await page.locator('.burn-key').first().textContent()
  assert.equal(first, 'Stop called')
  assert.ok(stop.y + stop.height < 844 - 64, `stop ends at ${stop.y + stop.height}`)
  await page.getByText('A training aid with no tactical authority').waitFor()
})

test('one thumb logs the flame, a planned move, a call-out and another move', async () => {
  await press('Lit')
  await page.getByText('Move 1 of 9').waitFor()
  await press('Made')
  await page.getByText('Move 2 of 9').waitFor()
  await press('Leave it out')
  await page.getByText('Move 3 of 9').waitFor()
  await press('Darker')
  await page.getByRole('group', { name: 'Floor hole' }).getByRole('button', { name: 'Open' }).click()
  await page.locator('.burn-list li', { hasText: 'Floor hole: Open' }).waitFor()
  const logged = await notes()
  assert.deepEqual(logged.map(({ what }) => what), ['begin', 'lit', 'move', 'skip', 'call', 'move'])
  assert.ok(new Set(logged.map(({ burn }) => burn)).size === 1)
  for (const { at } of logged) assert.ok(at >= began && at <= Date.now(), 'each has the time at which it was logged')
  const small = await page.locator('.burn-key, .burn-made .button').evaluateAll((all) => all.filter((one) => one.getBoundingClientRect().height < 72).length)
  assert.equal(small, 0, 'a gloved thumb finds every key')
  await look('during')
})

test('it is there after a reload, and a mistake is struck out but not lost', async () => {
  await page.reload()
  await page.getByText('Move 3 of 9').waitFor()
  await page.getByRole('button', { name: /^Strike out: Darker/ }).click()
  await page.locator('.burn-list s', { hasText: 'Darker' }).waitFor()
})

test('afterwards: timeline, questions, and the simulated box with the same moves', async () => {
  await press('End the log')
  await page.getByText(/the instructor-in-charge has closed the burn/).waitFor()
  await press('End the log now')
  await page.getByRole('heading', { name: 'Hot debrief' }).waitFor()
  assert.match(await page.locator('.burn-list').textContent(), /Port lower left: Half/)
  await look('after')
  await press('Burn it on the bench')
  await page.getByRole('tab', { name: 'What if' }).click({ timeout: 60_000 })
  const at = Number((await notes()).find(({ opening }) => opening === 'floor_hole').at - (await notes()).find(({ what }) => what === 'lit').at) / 1000
  await page.waitForFunction((t) => document.querySelector('.prop-clock').textContent.split(':').reduce((m, s) => 60 * Number(m) + Number(s), 0) > t, at, { timeout: 60_000 })
  const moves = await page.locator('.prop-moves').textContent()
  assert.match(moves, /Softwood strips laid and lit/)
  assert.match(moves, /Floor hole: open/)
  await look('beside')
})

test('the server has the log too', async () => {
  const logged = ['begin', 'lit', 'move', 'skip', 'call', 'move', 'strike', 'end']
  const kept = () => server.records().filter(({ kind }) => kind === 'note').map(({ body }) => body.what)
  for (let tries = 0; tries < 60 && kept().length < logged.length; tries++) await page.waitForTimeout(1000) // it goes when it can
  await server.kill()
  assert.deepEqual(kept(), logged)
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
