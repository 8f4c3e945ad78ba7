// From a tap to the next paint on a slow phone: processor four times slower, on
// the built app, through its screens and three scenes of a drill. Control in the
// same run: a button on an empty page that only counts. Prints one JSON line.
//
//   node pwa/bench/tap-paint.mjs http://127.0.0.1:PORT/
import { openBrowser } from '../e2e/lib/browser.mjs'
import { answerScene, onward } from '../e2e/lib/drill.mjs'
import { at, noteTaps } from './lib/taps.mjs'

const [address] = process.argv.slice(2)
const SLOWDOWN = 4
const SCENES = 3
const CONTROLS = 40

const { context, page, complaints, close } = await openBrowser()
const slow = async (one, rate) => (await context.newCDPSession(one)).send('Emulation.setCPUThrottlingRate', { rate })
const took = (one) => one.evaluate(() => globalThis.lintelTaps)

await page.addInitScript(noteTaps)
await page.goto(address)
await page.getByRole('navigation').first().waitFor()
await page.waitForTimeout(3000) // what is kept for use offline is fetched once, at first start
await slow(page, SLOWDOWN)

const links = page.getByRole('navigation').first().getByRole('link')
for (let round = 0; round < 2; round++) {
  for (let k = 0; k < (await links.count()); k++) {
    await links.nth(k).click()
    await page.waitForTimeout(700)
  }
}
const around = (await took(page)).length
await links.filter({ hasText: 'Drill' }).click()
await page.getByRole('button', { name: /^Begin/ }).first().click()
for (let scene = 1; scene <= SCENES; scene++) {
  await answerScene(page, async (button) => {
    await button.click()
    await page.waitForTimeout(250) // no one taps twice within that
  })
  if (scene < SCENES) await onward(page).click()
}
const ours = await took(page)

const empty = await context.newPage()
await empty.setContent('<button style="width:100%;height:72px">0</button>')
await empty.evaluate(noteTaps)
await empty.evaluate(() => {
  const button = document.querySelector('button')
  button.addEventListener('click', () => { button.textContent = String(Number(button.textContent) + 1) })
})
await slow(empty, SLOWDOWN)
for (let k = 0; k < CONTROLS; k++) {
  await empty.locator('button').click()
  await empty.waitForTimeout(100)
}
const control = await took(empty)
console.log(JSON.stringify({
  p98_ms: at(ours, 0.98), median_ms: at(ours, 0.5), taps: ours.length, screens: around,
  control_ms: at(control, 0.98), control_taps: control.length, complaints,
}))
await close()
