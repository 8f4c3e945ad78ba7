// Every screen, in every theme and at both sizes: nothing that axe finds, nothing
// that runs over the edge of a narrow phone, one heading that names the screen.
// SHOTS=folder keeps a picture of each.
import assert from 'node:assert/strict'
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { after, before, describe, test } from 'node:test'
import { AxeBuilder } from '@axe-core/playwright'
import { openBrowser } from './lib/browser.mjs'
import { answerScene, begin, sceneReady } from './lib/drill.mjs'
import { Server } from './lib/server.mjs'

const shots = process.env.SHOTS
if (shots) mkdirSync(shots, { recursive: true })

/**
 * Screens by address; `go` does something on the screen that stands. Where no
 * address is given the screen before it is gone on from.
 */
const screens = [
  { name: 'home', at: '/' },
  { name: 'size-up-pick', at: '/size-up' },
  { name: 'size-up-look', go: sketch },
  { name: 'size-up-reading', go: read },
  { name: 'size-up-box', go: box },
  { name: 'size-up-box-reading', go: readBox },
  { name: 'prop', at: '/prop' },
  { name: 'drill-start', at: '/drill' },
  { name: 'drill-ask', go: ask },
  { name: 'drill-reveal', go: reveal },
  { name: 'field-book', at: '/field-book' },
  { name: 'field-book-words', at: '/field-book/words' },
  { name: 'field-book-rules', at: '/field-book/rules' },
  { name: 'field-book-cautions', at: '/field-book/cautions' },
  { name: 'field-book-sources', at: '/field-book/sources' },
  { name: 'field-book-scales', at: '/field-book/scales' },
  { name: 'field-book-lesson', at: '/field-book/lesson/box-and-house' },
  { name: 'log', at: '/log' },
  { name: 'no-such-place', at: '/nowhere' },
]

/** Goes to an address as a link within the app does: the engine is not loaded anew. */
function follow(page, at) {
  return page.evaluate((path) => {
    history.pushState(null, '', path)
    dispatchEvent(new PopStateEvent('popstate'))
  }, at)
}

async function sketch(page) {
  await page.getByRole('button', { name: 'Sketch a house' }).click()
  await page.getByRole('tab', { name: 'Look' }).click()
}

async function read(page) {
  for (const name of ['Open', 'Out above, in below']) await page.getByRole('button', { name, exact: true }).click()
  await page.getByRole('tab', { name: 'Reading' }).click()
  await page.getByText('Conditions for rapid events').waitFor()
}

/** Leaves the sketch for a building whose inside is known: two storeys and a space under the roof. */
async function box(page) {
  await page.getByRole('tab', { name: 'Building' }).click()
  await page.getByRole('button', { name: 'Another building' }).click()
  await page.getByRole('button', { name: 'Leave it' }).click()
  await page.getByRole('button', { name: /Small box/ }).click()
}

/** One opening that smoke leaves above and air enters below: the path turns back on one storey. */
async function readBox(page) {
  await page.getByRole('button', { name: /^Port lower left/ }).click()
  await read(page)
  await page.getByText(/in and out by the port lower left/i).first().waitFor()
  assert.ok((await page.locator('.plan-path').count()) >= 1, 'the path is drawn')
  assert.equal(await page.getByText('This screen stopped').count(), 0)
}

async function ask(page) {
  await begin(page)
  await sceneReady(page)
}

async function reveal(page) {
  await answerScene(page)
  await page.locator('.item .scene canvas').waitFor()
}

const views = [
  { width: 390, height: 844, scheme: 'light', axe: true },
  { width: 1280, height: 800, scheme: 'dark', axe: true },
  { width: 320, height: 640, scheme: 'light' }, // the same page as at 390: looked at for its width only
]
if (shots) views.push({ width: 390, height: 844, scheme: 'dark' }, { width: 1280, height: 800, scheme: 'light' })

const server = new Server()
before(() => server.start())
after(() => server.kill())

for (const view of views) {
  describe(`${view.width} px, ${view.scheme}`, () => {
    let browser
    before(async () => {
      browser = await openBrowser(view)
      await browser.page.goto(server.url)
    })
    after(() => browser?.close())

    for (const screen of screens) {
      test(screen.name, async () => {
        const { page } = browser
        if (screen.at) await follow(page, screen.at)
        await screen.go?.(page)
        await page.locator('main:not([aria-busy]) h1').waitFor()
        await page.waitForTimeout(300)
        if (shots) await page.screenshot({ path: join(shots, `${screen.name}-${view.width}-${view.scheme}.png`) })
        await checkScreen(page)
        if (view.axe) await checkWithAxe(page)
      })
    }

    test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
  })
}

async function checkScreen(page) {
  const over = await page.evaluate(() => document.documentElement.scrollWidth - innerWidth)
  assert.ok(over <= 0, `runs ${over} px over the edge`)
  assert.equal(await page.locator('h1').count(), 1, 'one main heading')
}

async function checkWithAxe(page) {
  const { violations } = await new AxeBuilder({ page }).analyze()
  const found = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html).join(' | ').slice(0, 300)}`)
  assert.deepEqual(found, [])
}
