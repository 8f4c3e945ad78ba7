// The app in Spanish on the narrowest phone: the words are longer, and no page
// scrolls sideways for it. The choice itself is made with the buttons of Home.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { usePhone, useServer } from './lib/ready.mjs'

const places = ['/', '/size-up', '/prop', '/drill', '/log', '/field-book', '/class']
const server = useServer()
const browser = usePhone({ width: 320, height: 640, motion: 'reduce' })

test('the language is chosen on Home, and the page says which it is', async () => {
  const { page } = browser
  await page.goto(server.url)
  assert.equal(await page.locator('html').getAttribute('lang'), 'en')
  await page.getByRole('button', { name: 'Español' }).click()
  await page.getByRole('heading', { name: 'Empiece por la abertura' }).waitFor()
  assert.equal(await page.getByRole('button', { name: 'Español' }).getAttribute('aria-pressed'), 'true')
})

for (const at of places) {
  test(`${at} is Spanish and no wider than the phone`, async () => {
    const { page } = browser
    await page.goto(server.url + at)
    await page.locator('main:not([aria-busy]) h1').waitFor()
    await page.waitForTimeout(300)
    assert.equal(await page.locator('html').getAttribute('lang'), 'es')
    assert.equal(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), 0)
    const beyond = await page.evaluate(() =>
      [...document.querySelectorAll('nav a, [role=tab]')]
        .filter((one) => one.getBoundingClientRect().right > innerWidth + 0.5 || one.scrollWidth > one.clientWidth + 1)
        .map((one) => one.textContent),
    )
    assert.deepEqual(beyond, [], 'no way elsewhere is cut off')
  })
}

test('on a wide screen the names of the navigation stand apart', async () => {
  const { page } = browser
  await page.setViewportSize({ width: 1280, height: 800 })
  const apart = await page.locator('.frame-nav a').evaluateAll((all) => {
    const words = all.map((one) => {
      const range = document.createRange()
      range.selectNodeContents(one)
      return range.getBoundingClientRect()
    })
    return words.slice(1).map((word, n) => word.left - words[n].right)
  })
  await page.setViewportSize({ width: 320, height: 640 })
  assert.equal(apart.length, 5)
  for (const gap of apart) assert.ok(gap >= 16, `${gap} px between two names`)
})

test('no word of a key breaks in two, and the keys of a picture lie over no other', async () => {
  const { page } = browser
  await page.goto(`${server.url}/prop`)
  await page.getByRole('tab', { name: 'Aberturas' }).click({ timeout: 60_000 })
  const tall = await page.locator('.prop-toggle').evaluateAll((all) => all.filter((one) => {
    const range = document.createRange()
    range.selectNodeContents(one)
    return range.getClientRects().length > 1
  }).map((one) => one.textContent))
  assert.deepEqual(tall, [])
  const [clock, view] = await Promise.all([page.locator('.prop-clock').boundingBox(), page.locator('.scene-view').boundingBox()])
  assert.ok(clock.x + clock.width <= view.x, 'the clock and the keys of the picture stand apart')
})

/** Words of elements that stand on more than one line. */
const broken = (elements) => elements.flatMap((one) => {
  const text = document.createTreeWalker(one, NodeFilter.SHOW_TEXT)
  const found = []
  for (let node = text.nextNode(); node; node = text.nextNode()) {
    for (const { 0: word, index } of node.data.matchAll(/[^\s-]+/g)) {
      const range = document.createRange()
      range.setStart(node, index)
      range.setEnd(node, index + word.length)
      if (new Set([...range.getClientRects()].map(({ top }) => Math.round(top))).size > 1) found.push(word)
    }
  }
  return found
})

test('a thumb in the sun finds whole words on the keys of a live burn', async () => {
  const { page } = browser
  await page.evaluate(() => localStorage.setItem('lintel.theme', 'outdoor'))
  await page.setViewportSize({ width: 390, height: 844 })
  await page.goto(`${server.url}/prop/burning`)
  await page.getByRole('checkbox').last().waitFor()
  for (const box of await page.getByRole('checkbox').all()) await box.check()
  await page.getByLabel('Palabra de alto', { exact: true }).fill('Puerto')
  await page.getByLabel(/^Firmado por/).fill('Garza')
  await page.getByRole('button', { name: 'Firmar y empezar el registro' }).click()
  await page.getByRole('timer').waitFor()
  assert.deepEqual(await page.locator('.burn-key, .theme-button').evaluateAll(broken), [])
  assert.equal(await page.evaluate(() => document.documentElement.scrollWidth - innerWidth), 0)
})

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
