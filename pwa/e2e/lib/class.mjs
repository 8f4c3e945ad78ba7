// A class as people work in it: an instructor's laptop, a projector, and phones,
// each a browser context of its own in one Chromium.
import assert from 'node:assert/strict'
import { eventsOnDevice, leaves, questionOf, sayHowSure } from './drill.mjs'

export { checkScreen } from './check.mjs'

const slow = { timeout: 90_000 } // thirteen engines share what CI has of cores

/** A context with its page, without an offline copy unless that is asked for; what the page complains of is gathered in `complaints`. */
export async function openPage(browser, complaints, { width = 390, height = 844, scheme = 'light', name = '', serviceWorkers = 'block', inPocket = false } = {}) {
  const context = await browser.newContext({ viewport: { width, height }, colorScheme: scheme, reducedMotion: 'reduce', serviceWorkers })
  context.setDefaultTimeout(slow.timeout)
  // A page out of sight draws no picture: twelve at once would want more than two cores.
  if (inPocket) await context.addInitScript(() => {
    globalThis.inPocket = true
    Object.defineProperty(document, 'hidden', { get: () => globalThis.inPocket })
  })
  const page = await context.newPage()
  listen(page, complaints, name)
  return { context, page, name }
}

/** Takes a page out of the pocket until its picture has been drawn, does what is to be done with it in sight, and puts it back. */
export async function inSight(page, then = () => {}) {
  await page.evaluate(() => {
    performance.clearMeasures('lintel-picture')
    globalThis.inPocket = false
  })
  if (await page.locator('.scene canvas').count()) {
    await page.waitForFunction(() => performance.getEntriesByName('lintel-picture').length > 0, undefined, slow)
  }
  await then()
  await page.evaluate(() => void (globalThis.inPocket = true))
}

export function listen(page, complaints, name) {
  page.on('pageerror', (error) => complaints.push(`${name}: ${error.message}`))
  page.on('console', (message) => {
    // A server that is away, a refusal, and plain http are what this test is about.
    const known = /Failed to load resource|WebSocket connection|Cross-Origin-Opener-Policy/
    if (message.type() === 'error' && !known.test(message.text())) complaints.push(`${name}: ${message.text()}`)
  })
}

/** Makes the first instructor by the set-up code that the server printed. */
export async function setUp(page, url, code) {
  await page.goto(`${url}/instructor`)
  await page.getByLabel('Set-up code').fill(code)
  await page.getByLabel('Call sign').fill('Gannet')
  await page.getByLabel('Pass phrase').fill('low smoke under a high lintel')
  await page.getByRole('button', { name: 'Make it' }).click()
  await page.getByRole('heading', { name: 'Open a class' }).waitFor(slow)
}

/** Builds a set out of families and seeds, by hand. */
export async function buildSet(page, url, title, scenes) {
  await page.goto(`${url}/instructor/sets/new`)
  await page.getByLabel('Title of the set').fill(title)
  for (const { family, seed } of scenes) {
    await page.getByLabel('Family').selectOption(family)
    await page.getByLabel('Seed', { exact: true }).fill(String(seed))
    await page.getByRole('button', { name: 'Add it' }).click()
  }
  await page.getByLabel('Time to look').first().fill('600')
  await page.getByRole('button', { name: 'Save the set' }).click()
  await page.waitForURL(/\/instructor\/sets\/(?!new)/, slow)
}

/** Opens a class of the only set; returns its id. */
export async function openClass(page, url, title) {
  await page.goto(`${url}/instructor`)
  await page.getByLabel('Title', { exact: true }).fill(title)
  await page.getByRole('button', { name: 'Open it' }).click()
  await page.waitForURL(/\/board\//, slow)
  return new URL(page.url()).pathname.split('/').at(-1)
}

/** Joins by the token of the code that a camera reads. */
export async function joinByToken(page, url, token, callSign) {
  await page.goto(`${url}/class#${token}`)
  await page.getByText('The code was read').waitFor(slow)
  assert.equal(new URL(page.url()).hash, '', 'the token has gone from the address')
  await enter(page, callSign)
}

/** Joins by typing the eight characters. */
export async function joinByCode(page, url, code, callSign) {
  await page.goto(`${url}/class`)
  await page.getByLabel('Class code').fill(code.toLowerCase())
  await enter(page, callSign)
}

async function enter(page, callSign) {
  const field = page.getByLabel('Call sign')
  await page.waitForFunction((input) => input.value !== '', await field.elementHandle(), slow) // the device's own stands there first
  await field.fill(callSign)
  const isIn = page.getByText(`You are ${callSign}`)
  const notNow = page.getByText('The server cannot be reached')
  for (let turn = 0; turn < 3; turn++) {
    await page.getByRole('button', { name: 'Join' }).click()
    await isIn.or(notNow).waitFor(slow).catch(async () => assert.fail(`${callSign} did not get in: ${await page.locator('body').innerText()}`))
    if (await isIn.count()) return // else a busy machine was slow to answer: a person presses again
  }
  await isIn.waitFor(slow)
}

/** Answers every question of the open scene, the nth choice of each, and stops before the commit. */
export async function answer(page, nth) {
  await page.locator('.item-asking .scene canvas').first().waitFor(slow)
  const ready = page.getByRole('button', { name: 'Commit', exact: true })
  while ((await ready.count()) === 0) await answerOne(page, nth)
  await sayHowSure(page)
}

export async function answerOne(page, nth) {
  const asked = page.getByRole('region', { name: 'Your answer' })
  await asked.waitFor(slow)
  const question = await questionOf(asked)
  const slider = asked.getByRole('slider')
  if (await slider.count()) {
    for (let n = 0; n <= nth; n++) await slider.press('ArrowDown')
    await asked.getByRole('button', { name: 'Set it here' }).click()
  } else {
    const choices = asked.locator('.choice')
    await choices.nth(nth % (await choices.count())).click()
  }
  await leaves(page, question, slow)
}

/** Says how sure one is, where that is asked. */
export async function beSure(page) {
  const sure = page.getByRole('group', { name: /How sure/ })
  if (await sure.count()) await sure.getByRole('button', { name: /Fairly/ }).click()
}

export async function commit(page) {
  await beSure(page)
  await page.getByRole('button', { name: 'Commit', exact: true }).click()
  await page.getByText(/^Kept/).waitFor(slow)
}

/** What this phone committed in a class, from its own disk. */
export async function committedOn(page, id) {
  const events = await eventsOnDevice(page)
  return events.filter(({ body }) => body.class?.id === id).map(({ body }) => ({ ...body.class, replies: body.answer.replies }))
}

/** Asks the server as the page is signed in; fails with what the server said unless that is what is wanted. */
export async function api(page, method, path, body, wanted = 2) {
  const init = { method, headers: { 'content-type': 'application/json' }, ...(body && { body: JSON.stringify({ v: 1, ...body }) }) }
  const { status, said } = await page.evaluate(
    async ([to, how]) => {
      const response = await fetch(`/api/v1${to}`, how)
      return { status: response.status, said: await response.json().catch(() => ({})) }
    },
    [path, init],
  )
  assert.equal(Math.floor(status / 100), wanted, `${method} ${path}: ${status} ${JSON.stringify(said)}`)
  return said
}

/** Does something to a class as its instructor. */
export const act = (page, id, what, wanted) => api(page, 'POST', `/classes/${id}/do`, { act: what }, wanted)

/** The first instructor and a set, made without the screens that class.test.mjs goes through. */
export async function prepare(page, server, title, scenes) {
  await page.goto(`${server.url}/instructor`)
  await api(page, 'POST', '/setup', { code: server.setUpCode, call_sign: 'Gannet', pass_phrase: 'low smoke under a high lintel' })
  const { set } = await api(page, 'POST', '/sets', { title, scenes: scenes.map((scene) => ({ look_s: 0, note: '', ...scene })) })
  return set.id
}

/** Opens a class of a set, and its board. */
export async function openBoard(page, server, plan) {
  const { class: opened } = await api(page, 'POST', '/classes', { pace: 'led', ...plan })
  await page.goto(`${server.url}/board/${opened.id}`)
  await page.getByText('Nobody has joined yet').first().waitFor(slow)
  return opened
}

/** Where the class stands, on any of its screens. */
export const atStep = (page, step) => page.locator('.steps [aria-current]', { hasText: step }).waitFor(slow)
