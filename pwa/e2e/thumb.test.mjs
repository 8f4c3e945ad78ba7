// A set of eight by thumb on a small phone with the network off, within five
// minutes: one of every kind. FAMILIES=all goes on through every family. What a
// person needs is counted in taps; what this machine took beside it is only told,
// as it says more of the machine than of a phone (bench -only tap_paint).
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { eventsOnDevice, layOut, oneOfEachKind, setSize, wholeSet } from './lib/drill.mjs'
import { usePhone, useServer } from './lib/ready.mjs'

const server = useServer()
const families = process.env.FAMILIES === 'all' ? server.families() : oneOfEachKind
const sets = Array.from({ length: Math.ceil(families.length / setSize) }, (_, n) => families.slice(n * setSize).concat(families).slice(0, setSize))
const browser = usePhone({ width: 360, height: 640, touch: true })

// What a person adds to what the device needs: for each tap one decision and one
// reach for the target. Keystroke-level model, Card, Moran & Newell 1980: M 1.35 s,
// P 1.1 s, K 0.2 s (from memory, to be confirmed).
const tapS = 1.35 + 1.1 + 0.2
const mostS = 300
const deviceS = 120 // of it, what the device may take: 15 s a scene, chosen by us
const answerPx = 72 // an answer's short side (design)
const otherPx = 48

test('it is installed, and the network goes', async () => {
  const { page, context } = browser
  await page.goto(server.url)
  await page.getByText('This device has everything it needs offline.').waitFor({ timeout: 60_000 })
  await context.setOffline(true)
  await server.kill()
})

for (const [n, set] of sets.entries()) {
  test(`eight scenes by thumb, offline, in under five minutes: ${set.join(', ')}`, async () => {
    const { page } = browser
    await layOut(page, set.map((family) => server.scene(family)))
    await page.goto(`${server.url}/drill`)
    let taps = 0
    const began = performance.now()
    await wholeSet(page, async (button) => {
      await tap(page, button)
      taps++
    })
    const tookS = (performance.now() - began) / 1000
    console.log(`# ${setSize} scenes: ${taps} taps, ${(taps * tapS).toFixed(0)} s of a person, ${tookS.toFixed(0)} s of this machine and the script`)
    assert.equal((await eventsOnDevice(page)).length, (n + 1) * setSize)
    assert.ok(taps * tapS + deviceS < mostS, `${taps} taps`)
  })
}

/** Taps a button where it stands, once it stands still and nothing lies over it; it is as large as it must be. */
async function tap(page, button) {
  await button.click({ trial: true })
  const { x, y, width, height } = await button.boundingBox()
  const isAnswer = /\b(choice|button-main)\b/.test(await button.getAttribute('class'))
  assert.ok(Math.min(width, height) >= (isAnswer ? answerPx : otherPx), `${await button.textContent()} is ${width} by ${height} px`)
  assert.ok(x >= 0 && x + width <= 360, `${await button.textContent()} stands over the edge`)
  await page.touchscreen.tap(x + width / 2, y + height / 2)
}

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
