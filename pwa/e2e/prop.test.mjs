// The prop on the bench, as an instructor uses it: light it, make a move, go back
// in time, branch, look at both fires in numbers and as curves.
// SHOTS=folder keeps a picture of each step.
import assert from 'node:assert/strict'
import { before, describe, test } from 'node:test'
import { accessible, fits } from './lib/check.mjs'
import { shot, usePhone, useServer } from './lib/ready.mjs'

const shots = process.env.SHOTS
const views = [
  { width: 390, height: 844, scheme: 'light', houses: true },
  { width: 1280, height: 800, scheme: 'dark', houses: shots !== undefined },
  { width: 320, height: 640, scheme: 'light' },
]
if (shots) views.push({ width: 390, height: 844, scheme: 'dark', houses: true }, { width: 1280, height: 800, scheme: 'light', houses: true })

const server = useServer()

/** Runs in the page: counts the WebAssembly that is brought onto its own thread. */
function countModules() {
  globalThis.modulesHere = 0
  for (const way of ['compile', 'compileStreaming', 'instantiate', 'instantiateStreaming']) {
    const real = WebAssembly[way].bind(WebAssembly)
    WebAssembly[way] = (...given) => (globalThis.modulesHere++, real(...given))
  }
}

/** Runs in the page: keeps every move of the names of the buildings that no finger caused. */
function watchPick() {
  globalThis.pickMoved = []
  new PerformanceObserver((list) => {
    for (const { sources } of list.getEntries())
      for (const { node, previousRect, currentRect } of sources) if (node?.className === 'prop-pick') globalThis.pickMoved.push([previousRect.y, currentRect.y])
  }).observe({ type: 'layout-shift', buffered: true })
}

for (const view of views) {
  describe(`the bench at ${view.width} px, ${view.scheme}`, () => {
    const browser = usePhone(view)
    let page
    let shutS // when the port was shut: a slow machine is late at it
    before(async () => {
      page = browser.page
      await page.addInitScript(countModules)
      await page.addInitScript(watchPick)
      await page.goto(`${server.url}/prop`)
      await page.getByRole('button', { name: 'Light it', exact: true }).waitFor({ timeout: 60_000 })
    })

    const press = (name) => page.getByRole('button', { name }).first().click()
    const tab = (name) => page.getByRole('tab', { name, exact: true }).click()
    const clock = async () => {
      const [minutes, seconds] = (await page.getByRole('timer').textContent()).split(':').map(Number)
      return 60 * minutes + seconds
    }
    /** Lets the fire run until the clock stands at a time. */
    const until = async (seconds) => {
      const go = page.getByRole('button', { name: 'Go on', exact: true })
      if (await go.count()) await go.click()
      await page.waitForFunction((t) => {
        const [m, s] = document.querySelector('[role=timer]').textContent.split(':').map(Number)
        return 60 * m + s >= t
      }, seconds, { timeout: 60_000 })
    }
    /** Waits until the clock stands at a time, which what was done just now has set. */
    const standsAt = (seconds) => page.waitForFunction((t) => {
      const [m, s] = document.querySelector('[role=timer]').textContent.split(':').map(Number)
      return 60 * m + s === t
    }, seconds)
    /** Stands the fire still, and gives the time at which it stands. */
    const pause = async () => {
      await press('Pause')
      await page.getByRole('button', { name: 'Go on', exact: true }).waitFor()
      return clock()
    }
    const keep = async (name) => {
      await shot(page, `prop-${name}-${view.width}-${view.scheme}`)
      await fits(page, name)
    }
    /** The numbers of one line of the comparison: as it is, and what if. */
    const compared = async (line) => {
      const cells = page.locator('.prop-compare tr', { hasText: line }).first().locator('td')
      return (await cells.allTextContents()).slice(0, 2).map((text) => parseFloat(text))
    }

    test('the names of the buildings stand where they stood when the bench has come', async () => {
      await page.waitForTimeout(300)
      assert.deepEqual(await page.evaluate(() => globalThis.pickMoved), [])
    })

    test('it burns at sixteen times, and takes a move', async () => {
      await press('Light it')
      await press(/as fast as real/)
      await press(/as fast as real/)
      await until(90)
      await tab('Openings')
      await press('Shut: Port lower left')
      shutS = await clock()
      await until(shutS + 40)
      const stands = await pause()
      await page.waitForTimeout(1200)
      assert.equal(await clock(), stands, 'a paused fire stands')
      await page.getByRole('button', { name: 'One second on, then stand' }).click()
      await standsAt(stands + 1)
      await keep('shut')
    })

    test('time is dragged back to any moment, by finger and by key', async () => {
      const line = page.getByRole('slider', { name: 'Moment shown' })
      await line.fill('60')
      await standsAt(60)
      assert.match(await line.getAttribute('aria-valuetext'), /^1:00 of \d+:\d\d so far$/)
      await page.getByText(/You are looking back/).waitFor()
      await line.press('ArrowRight')
      await standsAt(61)
      await line.press('PageDown')
      await standsAt(51)
    })

    test('the same fire with the port left open, beside it and in numbers', async () => {
      await tab('What if')
      await press(/^Leave out: Port lower left: shut/)
      await page.getByRole('region', { name: 'Two fires on one clock' }).waitFor()
      await page.getByRole('button', { name: 'Pause', exact: true }).waitFor() // it goes on by itself
      assert.equal(await page.locator('.prop-scene canvas').count(), 2)
      const compareS = shutS + 35
      await until(compareS)
      await pause()
      await page.getByRole('slider', { name: 'Moment shown' }).fill(String(compareS)) // however far it has run by now
      await standsAt(compareS)
      const [shut, open] = await compared('Heat release')
      assert.ok(open > 10 * shut, `left open it burns on: ${open} against ${shut} kW`)
      const boxes = await page.locator('.prop-scene').evaluateAll((all) => all.map((one) => one.getBoundingClientRect()).map(({ left, top, right, bottom }) => ({ left, top, right, bottom })))
      for (const { left, right, top, bottom } of boxes) {
        assert.ok(left >= 0 && right <= view.width && bottom > top, 'both are in sight')
        assert.ok(bottom <= view.height, 'both are in sight at once')
      }
      await press('Draw the wall away')
      await page.waitForTimeout(800)
      await keep('two')
    })

    test('both as curves, with moves on the time axis, and as tables', async () => {
      await tab('Curves')
      await page.locator('.prop-plot canvas').nth(3).waitFor()
      assert.equal(await page.locator('.prop-plot canvas').count(), 4)
      const drawn = await page.locator('.prop-plot canvas').evaluateAll((all) => all.map((canvas) => {
        const { data } = canvas.getContext('2d').getImageData(0, 0, canvas.width, canvas.height)
        return data.reduce((sum, value, k) => sum + (k % 4 === 3 && value > 0 ? 1 : 0), 0)
      }))
      for (const pixels of drawn) assert.ok(pixels > 1000, `a curve of ${pixels} pixels`)
      await page.getByText('The same as a table').first().click()
      const table = page.getByRole('table', { name: 'Heat release, kW' })
      await table.waitFor()
      const rows = await table.getByRole('row').allTextContents()
      assert.ok(rows.length > 10 && rows.length < 30, `${rows.length} rows`)
      assert.deepEqual(await table.getByRole('columnheader').allTextContents(), ['Time', 'As it is', 'What if'])
      await page.locator('.prop-plot').first().scrollIntoViewIfNeeded()
      await keep('curves')
    })

    test('a tap on a curve goes to that moment', async () => {
      const over = page.locator('.prop-plot .u-over').first()
      const { width, height } = await over.boundingBox()
      await over.click({ position: { x: width / 2, y: height / 2 } })
      const newest = Number(await page.getByRole('slider', { name: 'Moment shown' }).getAttribute('max'))
      const off = async () => Math.abs((await clock()) - newest / 2)
      for (let tries = 0; tries < 100 && (await off()) >= 3; tries++) await page.waitForTimeout(100)
      assert.ok((await off()) < 3, `half-way along ${newest} s is ${await clock()} s`)
    })

    test('one of them is kept, and burns on', async () => {
      await press('Go on') // the curves follow it while a fire goes
      await press('Keep the what-if')
      await page.locator('.prop-scene').nth(1).waitFor({ state: 'detached' })
      await tab('What if')
      assert.equal(await page.getByRole('button', { name: /^Leave out/ }).count(), 0, 'the move is not in it')
      await until(150)
      await pause()
    })

    test('both futures of one moment before one chooses', async () => {
      await page.getByLabel('Opening', { exact: true }).selectOption({ label: 'Floor hole: shut' })
      const chosen = await clock()
      await press('Show both futures')
      await page.getByRole('button', { name: 'Pause', exact: true }).waitFor() // it goes on by itself
      await until(chosen + 15)
      await pause()
      const shown = await page.locator('.prop-moves').textContent()
      assert.doesNotMatch(shown, /Floor hole/, 'nothing is done yet')
      await press('Keep as it is')
      await page.locator('.prop-scene').nth(1).waitFor({ state: 'detached' })
      const back = await clock()
      assert.ok(Math.abs(back - chosen) <= 1, `back at ${back}, asked at ${chosen}`)
    })

    test('the fire runs on a thread that no tap waits for', async () => {
      const stoodS = await clock()
      await press('Go on')
      await until(stoodS + 10)
      await pause()
      assert.equal(await page.evaluate(() => globalThis.modulesHere), 0, 'the engine is not on the page')
      await page.evaluate(() => WebAssembly.compile(Uint8Array.of(0, 97, 115, 109, 1, 0, 0, 0))) // control: the smallest module is seen
      assert.equal(await page.evaluate(() => globalThis.modulesHere), 1)
    })

    test('nothing that axe finds', async () => {
      await tab('Curves')
      await page.locator('.prop-plot canvas').first().waitFor()
      await accessible(page)
    })

    for (const name of view.houses ? ['One storey', 'Two storeys', 'Flats', 'Workshop'] : []) {
      test(`${name}: burns, and every side can be looked at`, async () => {
        await press(name)
        await press('Light it')
        await press(/as fast as real/)
        await press(/as fast as real/)
        await until(60)
        for (const side of ['Bravo', 'Charlie', 'Delta', 'Alpha']) {
          await press(side)
          await page.waitForTimeout(200)
        }
        await press('Draw the wall away')
        await page.waitForFunction(() => {
          const canvas = document.querySelector('.prop-scene canvas')
          const copy = new OffscreenCanvas(canvas.clientWidth, canvas.clientHeight) // the canvas itself belongs to the thread that draws
          const ctx = copy.getContext('2d')
          ctx.drawImage(canvas, 0, 0, copy.width, copy.height)
          const { data } = ctx.getImageData(0, 0, copy.width, copy.height)
          return data.every((value, k) => k % 4 !== 3 || value > 0)
        }, undefined, { timeout: 60_000 })
        const heat = await page.locator('.prop-figures dd').last().textContent()
        assert.match(heat, /\d (kW|MW)$/)
        await keep(name.replace(' ', '-').toLowerCase())
      })
    }

    test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
  })
}
