// From a tap to the next paint on a slow phone: processor four times slower, on
// the built app, through its screens and six scenes of a drill, as the browser
// itself tells of each touch. Control in the same run: a button on an empty page
// that only counts. Prints one JSON line.
//
//   node pwa/bench/tap-paint.mjs http://127.0.0.1:PORT/
import { openBrowser } from '../e2e/lib/browser.mjs'
import { answerScene, onward } from '../e2e/lib/drill.mjs'
import { at, noteTaps, tapsOf, touch } from './lib/taps.mjs'

const [address] = process.argv.slice(2)
const SLOWDOWN = 4
const SCENES = 6
const CONTROLS = 60

const { context, page, complaints, close } = await openBrowser({ touch: true })
const slow = async (one, rate) => (await context.newCDPSession(one)).send('Emulation.setCPUThrottlingRate', { rate })

/** Through every screen, then some scenes; returns how long each tap took. */
async function ours() {
  await page.addInitScript(noteTaps)
  await page.goto(address)
  await page.getByRole('navigation').first().waitFor()
  await page.waitForTimeout(3000) // what is kept for use offline is fetched once, at first start
  await slow(page, SLOWDOWN)
  const links = page.getByRole('navigation').first().getByRole('link')
  for (let round = 0; round < 2; round++) {
    for (let k = 0; k < (await links.count()); k++) {
      await touch(page, links.nth(k))
      await page.waitForTimeout(700)
    }
  }
  const screens = (await tapsOf(page)).length
  await touch(page, links.filter({ hasText: 'Drill' }))
  await touch(page, page.getByRole('button', { name: /^Begin/ }).first())
  for (let scene = 1; scene <= SCENES; scene++) {
    await answerScene(page, async (button) => {
      await touch(page, button)
      await page.waitForTimeout(250) // no one taps twice within that
    })
    if (scene < SCENES) await touch(page, onward(page))
  }
  return { taps: await tapsOf(page), screens, slowest: await page.evaluate(() => globalThis.lintelTaps.toSorted((a, b) => b.ms - a.ms).slice(0, 3)) }
}

/** The same finger on a page that does nothing, with the app gone. */
async function control() {
  const empty = await context.newPage()
  await page.close()
  await empty.setContent('<meta name="viewport" content="width=device-width"><button style="width:100%;height:72px">0</button>')
  await empty.evaluate(noteTaps)
  await empty.evaluate(() => {
    const button = document.querySelector('button')
    button.addEventListener('click', () => { button.textContent = String(Number(button.textContent) + 1) })
  })
  await slow(empty, SLOWDOWN)
  for (let k = 0; k < CONTROLS; k++) {
    await touch(empty, empty.locator('button'))
    await empty.waitForTimeout(100)
  }
  return tapsOf(empty)
}

const { taps, screens, slowest } = await ours()
const still = await control()
console.log(JSON.stringify({
  p98_ms: at(taps, 0.98), median_ms: at(taps, 0.5), taps: taps.length, screens, slowest,
  control_ms: at(still, 0.98), control_median_ms: at(still, 0.5), control_taps: still.length, complaints,
}))
await close()
