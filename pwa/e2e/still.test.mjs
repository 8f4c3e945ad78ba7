// Nothing that can be tapped moves under a thumb by itself: through a set with a scene
// of every kind the browser counts what shifted, and of that only what carries a
// button and did not follow from the person's own tap or key. Control: an element
// that comes late and pushes them is caught.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { answerScene, begin, layOut, oneOfEachKind, onward, sceneReady } from './lib/drill.mjs'
import { prepare, usePhone, useServer } from './lib/ready.mjs'

const server = useServer()
const browser = usePhone({ width: 360, height: 640, touch: true })
prepare(() => browser.page.addInitScript(watch))

/** Runs in the page: gathers the shifts of buttons and links that no input came before (Layout Instability, https://wicg.github.io/layout-instability/). */
function watch() {
  globalThis.moved = []
  globalThis.answersMS = 500 // the browser's own measure of what follows from an input; a slow machine's is set by the test
  let lastInput = -Infinity
  for (const kind of ['pointerdown', 'keydown']) addEventListener(kind, ({ timeStamp }) => (lastInput = timeStamp), true)
  const tappable = 'button, a, input, summary, [role="slider"]'
  const carries = (node) => node instanceof Element && (node.matches(tappable) || node.querySelector(tappable) !== null)
  const place = ({ x, y, width, height }) => [x, y, width, height].map(Math.round).join(' ')
  new PerformanceObserver((list) => {
    for (const { hadRecentInput, startTime, sources } of list.getEntries()) {
      if (hadRecentInput || startTime - lastInput < globalThis.answersMS) continue
      for (const { node, previousRect, currentRect } of sources) {
        if (carries(node)) globalThis.moved.push(`${node.className || node.localName} "${node.textContent.slice(0, 40)}" from ${place(previousRect)} to ${place(currentRect)}`)
      }
    }
  }).observe({ type: 'layout-shift', buffered: true })
}

/** What moved since it was last asked. */
const moved = () => browser.page.evaluate(() => globalThis.moved.splice(0))

/** Longer than a shift is taken for the answer to an input. */
let longer = 700

/** How long this machine takes from a tap to what it asked for: so long what moves follows from the tap. */
async function atItsPace(page, tap) {
  const began = performance.now()
  await tap()
  const tookMS = performance.now() - began
  longer = Math.max(longer, 1.4 * tookMS)
  await page.evaluate((ms) => (globalThis.answersMS = Math.max(globalThis.answersMS, ms)), tookMS)
}

test('through a set of every kind no button moves by itself', async () => {
  const { page } = browser
  await page.goto(`${server.url}/drill`)
  await page.getByRole('button', { name: /^Begin a set/ }).waitFor()
  await layOut(page, oneOfEachKind.map((family) => server.scene(family)))
  await page.goto(`${server.url}/drill`)
  await atItsPace(page, async () => {
    await begin(page)
    await sceneReady(page)
  })
  for (const family of oneOfEachKind) {
    await sceneReady(page)
    await page.waitForTimeout(longer)
    assert.deepEqual(await moved(), [], `${family}, while it is asked`)
    await answerScene(page)
    await page.waitForTimeout(longer)
    assert.deepEqual(await moved(), [], `${family}, once it is explained`)
    await onward(page).click()
  }
  await page.getByRole('heading', { name: 'The set is done' }).waitFor()
  await page.waitForTimeout(longer)
  assert.deepEqual(await moved(), [], 'at the end of the set')
})

test('an element that comes late is caught', async () => {
  const { page } = browser
  await page.goto(`${server.url}/drill`) // at its top: further down the browser itself holds what is in sight
  await page.getByRole('button', { name: /^Begin a set/ }).waitFor()
  await page.waitForTimeout(longer)
  assert.deepEqual(await moved(), [], 'the start screen')
  await page.evaluate(() => {
    const late = document.createElement('p')
    late.style.height = '80px'
    document.querySelector('main').prepend(late)
  })
  await page.waitForTimeout(longer)
  assert.notDeepEqual(await moved(), [])
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
