// The tests before, after and long after a course: a whole one, and the others begun,
// weeks apart by the clock. No scene is met twice, in a test or in a drill.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { answerScene, answerUnsure, begin, eventsOnDevice } from './lib/drill.mjs'
import { prepare, usePhone, useServer } from './lib/ready.mjs'

const firstTestSeed = 2 ** 52 // quiz.FirstTestSeed
const scenesOfAForm = 21
const weekMS = 7 * 24 * 3600 * 1000
const server = useServer()
const browser = usePhone({ motion: 'reduce' })
let page
prepare(() => void (page = browser.page))

const form = (name) => page.getByRole('button', { name })
const answered = async () => (await eventsOnDevice(page)).filter(({ kind }) => kind === 'answer')

/** Answers the open scene of a test, by "cannot tell" where that is quickest, and commits. */
async function tested(n) {
  await page.getByText(`Scene ${n} of ${scenesOfAForm}`, { exact: true }).last().waitFor({ timeout: 60_000 })
  const commit = await answerUnsure(page)
  const had = (await answered()).length
  await commit.click()
  await assert.doesNotReject(keptMore(had))
  assert.equal(await page.getByText('What would have told').count(), 0, 'nothing is explained before the end')
}

async function keptMore(had) {
  for (let tries = 0; tries < 900; tries++) {
    if ((await answered()).length > had) return
    await page.waitForTimeout(100)
  }
  throw new Error('the answer was not kept')
}

test('a whole test before the course explains nothing until its end, and is taken once', async () => {
  await page.goto(`${server.url}/drill`)
  await begin(page)
  await answerScene(page) // a drill beside it
  await page.goto(`${server.url}/drill`)
  await form('Test before a course').click()
  for (let n = 1; n <= 3; n++) await tested(n)
  await page.goto(`${server.url}/drill`) // left, and gone on with
  await page.getByRole('button', { name: /^Go on with scene 4 of 21/ }).click()
  for (let n = 4; n <= scenesOfAForm; n++) await tested(n)
  await page.getByRole('heading', { name: 'The test is done' }).waitFor()
  assert.equal(await page.locator('.ends > li').count(), scenesOfAForm)
  await page.goto(`${server.url}/drill`)
  await page.getByText(/^Test before a course: taken/).waitFor()
  assert.equal(await form('Test before a course').count(), 0)
})

test('after the course, and weeks later by the clock, every scene is a new one of the same families', async () => {
  await form('Test after a course').click()
  for (let n = 1; n <= 3; n++) await tested(n)
  await page.clock.setSystemTime(Date.now() + 8 * weekMS)
  await page.goto(`${server.url}/drill`)
  await form('Test some weeks later').click()
  for (let n = 1; n <= 3; n++) await tested(n)

  const all = (await answered()).map(({ t_client, body: { answer } }) => ({ t_client, ...answer }))
  const [drilled, tests] = [all.slice(0, 1), all.slice(1)]
  assert.ok(drilled.every(({ seed }) => seed < firstTestSeed))
  assert.ok(tests.every(({ seed }) => seed >= firstTestSeed))
  const [pre, post, delayed] = [tests.slice(0, scenesOfAForm), tests.slice(scenesOfAForm, -3), tests.slice(-3)]
  assert.equal(new Set(all.map(({ family, seed }) => `${family} ${seed}`)).size, all.length, 'no scene twice')
  assert.deepEqual(post.map(({ family }) => family), pre.slice(0, 3).map(({ family }) => family))
  assert.deepEqual(delayed.map(({ family }) => family), pre.slice(0, 3).map(({ family }) => family))
  assert.ok(delayed[0].t_client - post.at(-1).t_client > 7 * weekMS)
})

test('the Log sets the three side by side, and one that was left says what is left of it', async () => {
  await page.goto(`${server.url}/log`)
  for (const name of ['Before the course', 'After the course', 'Some weeks later']) await page.getByText(name, { exact: true }).waitFor()
  await page.getByText(/21 of 21 scenes/).waitFor()
  await page.goto(`${server.url}/drill`)
  await page.getByText('18 of its 21 scenes are left.').first().waitFor()
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
