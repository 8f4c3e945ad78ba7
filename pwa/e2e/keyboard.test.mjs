// A drill with no pointer at all, and with reduced motion.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { eventsOnDevice, leaves, questionOf, sceneReady, setSize } from './lib/drill.mjs'
import { usePhone, useServer } from './lib/ready.mjs'

const server = useServer()
const browser = usePhone({ motion: 'reduce' })

/** Presses Tab until an element that fits has the focus. */
async function tabTo(page, fits, what) {
  for (let presses = 0; presses < 80; presses++) {
    await page.keyboard.press('Tab')
    const focused = await page.evaluate(() => {
      const { textContent, ariaLabel, role, className } = document.activeElement
      return { text: (ariaLabel ?? textContent).trim(), role, look: String(className) }
    })
    if (fits(focused)) return focused
  }
  throw new Error(`no ${what} within 80 presses of Tab`)
}

const named = (pattern) => (focused) => pattern.test(focused.text)

const focusedIs = (page, pattern) =>
  page.evaluate((source) => new RegExp(source).test((document.activeElement.ariaLabel ?? document.activeElement.textContent).trim()), pattern.source)

test('a set of eight is answered, committed and explained by key alone', async () => {
  const { page } = browser
  await page.goto(server.url)
  await tabTo(page, named(/^Next for you/), 'way to the drill')
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { level: 1, name: 'Drill' }).waitFor()
  await tabTo(page, named(/^Begin a set/), 'Begin')
  await page.keyboard.press('Enter')
  for (let scene = 1; scene <= setSize; scene++) {
    await oneScene(page)
    assert.equal((await eventsOnDevice(page)).length, scene)
  }
  await page.getByRole('heading', { name: 'The set is done' }).waitFor()
})

async function oneScene(page) {
  await sceneReady(page)
  while (!(await page.getByRole('button', { name: 'Commit' }).count())) await answerByKey(page)
  if (await page.getByRole('group', { name: /How sure/ }).count()) {
    await tabTo(page, named(/^Fairly/), 'confidence')
    await page.keyboard.press('Space')
  }
  await tabTo(page, named(/^Commit$/), 'Commit')
  await page.keyboard.press('Enter')
  await page.getByText('Kept on this device').waitFor({ timeout: 60_000 })
  await tabTo(page, named(/^(Next scene|See them all)$/), 'way on')
  await page.keyboard.press('Enter')
}

async function answerByKey(page) {
  const asked = page.getByRole('region', { name: 'Your answer', exact: true })
  const question = await questionOf(asked)
  const found = await tabTo(page, ({ look, role, text }) => look === 'choice' || role === 'slider' || text.startsWith('I would report'), 'answer')
  if (found.role === 'slider') {
    await page.keyboard.press('ArrowUp')
    await tabTo(page, named(/^Set it here$/), 'way to set the plane')
  }
  await page.keyboard.press('Enter')
  await leaves(page, question)
}

test('after each answer the focus is on what comes next, not at the top of the page', async () => {
  const { page } = browser
  await page.goto(`${server.url}/drill`)
  await tabTo(page, named(/^Begin a set/), 'Begin')
  await page.keyboard.press('Enter')
  await sceneReady(page)
  await answerByKey(page)
  assert.equal(await focusedIs(page, /^$/), false)
  assert.notEqual(await page.evaluate(() => document.activeElement.tagName), 'BODY')
})

test('the focus is always to be seen', async () => {
  const { page } = browser
  await page.goto(`${server.url}/size-up`)
  await tabTo(page, named(/Sketch a house/), 'sketch')
  const outline = await page.evaluate(() => getComputedStyle(document.activeElement).outlineWidth)
  assert.ok(parseFloat(outline) >= 2, `outline of ${outline}`)
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
