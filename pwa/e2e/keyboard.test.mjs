// A drill with no pointer at all, and with reduced motion.
import assert from 'node:assert/strict'
import { after, before, test } from 'node:test'
import { openBrowser } from './lib/browser.mjs'
import { eventsOnDevice, sceneReady } from './lib/drill.mjs'
import { Server } from './lib/server.mjs'

const server = new Server()
let browser

before(async () => {
  await server.start()
  browser = await openBrowser({ motion: 'reduce' })
})
after(async () => {
  await browser?.close()
  await server.kill()
})

/** Presses Tab until an element that fits has the focus. */
async function tabTo(page, fits, what) {
  for (let presses = 0; presses < 60; presses++) {
    await page.keyboard.press('Tab')
    const focused = await page.evaluate(() => {
      const { textContent, ariaLabel, role, className } = document.activeElement
      return { text: (ariaLabel ?? textContent).trim(), role, look: String(className) }
    })
    if (fits(focused)) return focused
  }
  throw new Error(`no ${what} within 60 presses of Tab`)
}

const named = (pattern) => (focused) => pattern.test(focused.text)

test('a scene is answered, committed and explained by key alone', async () => {
  const { page } = browser
  await page.goto(server.url)
  await tabTo(page, named(/^Next for you/), 'way to the drill')
  await page.keyboard.press('Enter')
  await page.getByRole('heading', { level: 1, name: 'Drill' }).waitFor()
  await tabTo(page, named(/^Begin$/), 'Begin')
  await page.keyboard.press('Enter')
  await sceneReady(page)
  while (!(await page.getByRole('button', { name: 'Commit' }).count())) await answerByKey(page)
  if (await page.getByRole('group', { name: /How sure/ }).count()) {
    await tabTo(page, named(/^Fairly/), 'confidence')
    await page.keyboard.press('Space')
  }
  await tabTo(page, named(/^Commit$/), 'Commit')
  await page.keyboard.press('Enter')
  await page.getByText('Kept on this device').waitFor()
  assert.equal((await eventsOnDevice(page)).length, 1)
})

async function answerByKey(page) {
  const asked = page.getByRole('region', { name: 'Your answer' })
  const said = await asked.textContent()
  const found = await tabTo(page, ({ look, role }) => look === 'choice' || role === 'slider', 'answer')
  if (found.role === 'slider') {
    await page.keyboard.press('ArrowUp')
    await tabTo(page, named(/^Set it here$/), 'way to set the plane')
  }
  await page.keyboard.press('Enter')
  await page.waitForFunction(
    (text) => document.querySelector('section[aria-label="Your answer"]')?.textContent !== text,
    said,
  )
}

test('the focus is always to be seen', async () => {
  const { page } = browser
  await page.goto(`${server.url}/size-up`)
  await tabTo(page, named(/Sketch a house/), 'sketch')
  const outline = await page.evaluate(() => getComputedStyle(document.activeElement).outlineWidth)
  assert.ok(parseFloat(outline) >= 2, `outline of ${outline}`)
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
