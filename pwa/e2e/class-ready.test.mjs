// From nothing to a class: an instructor without a set has one made and opens a
// class of it by a press each, and whatever is missing is said and makes nothing.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import * as on from './lib/class.mjs'
import { prepare, shotsOf, useCrowd, useServer } from './lib/ready.mjs'

const shot = shotsOf('ready')
const slow = { timeout: 90_000 }
const server = useServer()
const browser = useCrowd()
const complaints = []
let page

prepare(async () => {
  ;({ page } = await on.openPage(browser, complaints, { width: 1280, height: 800, name: 'desk' }))
  await page.goto(`${server.url}/instructor`)
})

const press = (name) => page.getByRole('button', { name, exact: true }).click()
const classes = async () => (await on.api(page, 'GET', '/classes')).classes

test('the first instructor is not made with an empty field', async () => {
  await press('Make it')
  await page.getByText('Something is not filled in').waitFor(slow)
  await on.checkScreen(page, 'a field is missing')
})

test('a set with a scene of every kind is made by one press', async () => {
  await on.api(page, 'POST', '/setup', { code: server.setUpCode, call_sign: 'Gannet', pass_phrase: 'low smoke under a high lintel' })
  await page.goto(`${server.url}/instructor`)
  await press('Make a ready set')
  await page.getByRole('button', { name: 'Open it' }).waitFor(slow)
  const [set] = (await on.api(page, 'GET', '/sets')).sets
  assert.equal(new Set(set.scenes.map(({ family }) => family)).size, 8)
  await on.checkScreen(page, 'ready to open')
  await shot(page, 'desk')
})

test('a class without a title is not opened, and one named by its day is', async () => {
  const title = page.getByLabel('Title', { exact: true })
  const day = await title.inputValue()
  assert.match(day, /^Class of .*\d{4}/)
  await title.fill(' ')
  await press('Open it')
  await page.getByText('A class needs a title').waitFor(slow)
  assert.deepEqual(await classes(), [])
  await title.fill(day)
  await press('Open it')
  await page.waitForURL(/\/board\//, slow)
  await page.getByRole('button', { name: 'Start', exact: true }).waitFor(slow)
  assert.deepEqual((await classes()).map((one) => [one.title, one.scenes]), [[day, 8]])
})

test('a phone that joins with half a code is told so, and nobody is asked', async () => {
  const phone = await on.openPage(browser, complaints, { name: 'phone' })
  const asked = []
  phone.page.on('request', (request) => request.url().endsWith('/join') && asked.push(request.url()))
  await phone.page.goto(`${server.url}/class`)
  await phone.page.getByLabel('Class code').fill('2222')
  await phone.page.getByRole('button', { name: 'Join' }).click()
  await phone.page.getByText('The code has 8 letters and digits; 4 are typed').waitFor(slow)
  assert.deepEqual(asked, [])
  await phone.page.getByLabel('Class code').fill('22222222')
  await phone.page.getByRole('button', { name: 'Join' }).click()
  await phone.page.getByText('No class takes that code now').waitFor(slow)
  assert.equal(asked.length, 1, 'a whole code is asked for')
})

test('nothing was complained of', () => assert.deepEqual(complaints, []))
