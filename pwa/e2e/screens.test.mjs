// Every screen, in every theme and at both sizes: nothing that axe finds, nothing
// that runs over the edge of a narrow phone, one heading that names the screen.
// Of scenes one of each kind is asked and explained; FAMILIES=all takes one of
// each family. SHOTS=folder keeps a picture of each screen.
import assert from 'node:assert/strict'
import { before, describe, test } from 'node:test'
import { accessible, fits } from './lib/check.mjs'
import { answerScene, begin, layOut, oneOfEachKind, onward, sceneReady } from './lib/drill.mjs'
import { shot, usePhone, useServer } from './lib/ready.mjs'

const server = useServer()
const families = process.env.FAMILIES === 'all' ? server.families() : oneOfEachKind
const scenes = families.map((family) => server.scene(family))

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
  ...scenes.flatMap((scene, n) => [
    { name: `drill-ask-${scene.family}`, go: n === 0 ? askFirst : askNext },
    { name: `drill-reveal-${scene.family}`, go: reveal },
  ]),
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

async function askFirst(page) {
  await layOut(page, scenes)
  await page.goto(`${server.url}/drill`)
  await begin(page)
  await sceneReady(page)
}

async function askNext(page) {
  await onward(page).click()
  await sceneReady(page)
}

async function reveal(page) {
  await answerScene(page)
  await page.getByText('What would have told').waitFor()
  await page.locator('.item .scene canvas').first().waitFor() // one, two side by side, or two in one place
}

const views = [
  { width: 390, height: 844, scheme: 'light', axe: true },
  { width: 1280, height: 800, scheme: 'dark', axe: true },
  { width: 320, height: 640, scheme: 'light' }, // the same page as at 390: looked at for its width only
]
if (process.env.SHOTS) views.push({ width: 390, height: 844, scheme: 'dark' }, { width: 1280, height: 800, scheme: 'light' })

for (const view of views) {
  describe(`${view.width} px, ${view.scheme}`, () => {
    const browser = usePhone(view)
    before(() => browser.page.goto(server.url))

    for (const screen of screens) {
      test(screen.name, async () => {
        const { page } = browser
        if (screen.at) await follow(page, screen.at)
        await screen.go?.(page)
        await page.locator('main:not([aria-busy]) h1').waitFor()
        await page.waitForTimeout(300)
        await shot(page, `${screen.name}-${view.width}-${view.scheme}`)
        await fits(page)
        if (view.axe) await accessible(page)
      })
    }

    test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
  })
}

test('the scenes are of every kind there is', () => {
  const kinds = new Set(scenes.map(({ kind }) => kind))
  assert.equal(kinds.size, 8, [...kinds].join(', '))
})
