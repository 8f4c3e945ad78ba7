// A set of eight by thumb on a small phone with the network off, within five minutes.
import assert from 'node:assert/strict'
import { after, before, test } from 'node:test'
import { openBrowser } from './lib/browser.mjs'
import { eventsOnDevice, setSize, wholeSet } from './lib/drill.mjs'
import { Server } from './lib/server.mjs'

const server = new Server()
let browser

before(async () => {
  await server.start()
  browser = await openBrowser({ width: 360, height: 640, touch: true })
})
after(async () => {
  await browser?.close()
  await server.kill()
})

// What a person adds to what the device needs: for each tap one decision and one
// reach for the target. Keystroke-level model, Card, Moran & Newell 1980: M 1.35 s,
// P 1.1 s, K 0.2 s (from memory, to be confirmed).
const tapS = 1.35 + 1.1 + 0.2
const mostS = 300
const answerPx = 72 // an answer's short side (design)
const otherPx = 48

test('eight scenes by thumb, offline, in under five minutes', async () => {
  const { page, context } = browser
  await page.goto(server.url)
  await page.getByText('This device has everything it needs offline.').waitFor({ timeout: 60_000 })
  await context.setOffline(true)
  await server.kill()
  await page.goto(`${server.url}/drill`)
  let taps = 0
  const began = performance.now()
  await wholeSet(page, async (button) => {
    await button.click({ trial: true }) // it stands still, in sight, and nothing lies over it
    const { x, y, width, height } = await button.boundingBox()
    const isAnswer = /\b(choice|button-main)\b/.test(await button.getAttribute('class'))
    assert.ok(Math.min(width, height) >= (isAnswer ? answerPx : otherPx), `${await button.textContent()} is ${width} by ${height} px`)
    assert.ok(x >= 0 && x + width <= 360, `${await button.textContent()} stands over the edge`)
    await page.touchscreen.tap(x + width / 2, y + height / 2)
    taps++
  })
  const deviceS = (performance.now() - began) / 1000
  console.log(`# ${setSize} scenes: ${taps} taps, ${deviceS.toFixed(0)} s of device and script, ${(deviceS + taps * tapS).toFixed(0)} s with a person's share`)
  assert.ok(deviceS + taps * tapS < mostS)
  assert.equal((await eventsOnDevice(page)).length, setSize)
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
