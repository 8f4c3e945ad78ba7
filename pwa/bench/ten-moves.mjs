// The film strip .tour/ten-moves.png: one teaching sequence of ten moves on the
// small box, played on the real app at a phone's size. The moves and their times
// are those of content/buildings/box.json; each still is taken a little after its
// move, with the wall drawn away, and carries the clock, the move and the figures
// that the app itself showed.
//
//   node pwa/bench/ten-moves.mjs [URL of a running Lintel]
import { readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { openBrowser } from '../e2e/lib/browser.mjs'
import { Server } from '../e2e/lib/server.mjs'

const root = new URL('../../', import.meta.url)
const { moves } = JSON.parse(readFileSync(new URL('content/buildings/box.json', root), 'utf8'))
const out = fileURLToPath(new URL('.tour/ten-moves.png', root))

/** Fire time between a move and its still: long enough for the gas to answer; after water less, as the fire comes back. Chosen by us. */
const ANSWERS_S = 12
const WATER_S = 4

/** The moves of one moment are one move to the eye. */
const steps = [...new Set(moves.map(({ t_s }) => t_s))].map((tS) => ({ tS, at: moves.filter(({ t_s }) => t_s === tS) }))

const server = process.argv[2] ? undefined : await new Server().start()
const browser = await openBrowser({ width: 390, height: 844 })
const { page } = browser
await page.addInitScript(() => localStorage.setItem('lintel.units', 'metric'))
await page.goto(`${process.argv[2] ?? server.url}/prop`)
await page.getByRole('button', { name: 'Light it', exact: true }).waitFor({ timeout: 60_000 })
await page.getByRole('button', { name: 'Draw the wall away' }).click()
await page.getByRole('button', { name: /as fast as real/ }).click()

const stills = []
for (const [k, { tS, at }] of steps.entries()) {
  await runTo(tS)
  for (const move of at) await make(move)
  await runTo(tS + (at.some(({ water_l }) => water_l) ? WATER_S : ANSWERS_S))
  await page.waitForTimeout(1500) // the picture follows, and its smoke has had time to rise
  stills.push(await still(k, at))
}
await join(stills)
await browser.close()
await server?.kill()

/** Lets the fire run to a time, then on by single seconds, and stands. */
async function runTo(seconds) {
  const now = () => page.getByRole('timer').textContent().then((text) => text.split(':').reduce((m, s) => 60 * Number(m) + Number(s), 0))
  if ((await now()) < seconds - 3) {
    const go = page.getByRole('button', { name: 'Go on', exact: true })
    if (await go.count()) await go.click()
    await page.waitForFunction((t) => document.querySelector('[role=timer]').textContent.split(':').reduce((m, s) => 60 * Number(m) + Number(s), 0) >= t, seconds - 3, { timeout: 120_000, polling: 50 })
    await page.getByRole('button', { name: 'Pause', exact: true }).click()
  }
  for (let t = await now(); t < seconds; t = await now()) {
    await page.getByRole('button', { name: 'One second on, then stand' }).click()
    await page.waitForFunction((was) => document.querySelector('[role=timer]').textContent.split(':').reduce((m, s) => 60 * Number(m) + Number(s), 0) > was, t)
  }
}

async function make({ opening, open, fuel, water_l }) {
  if (fuel === 'straw') return // goes with the softwood
  if (fuel) return page.getByRole('button', { name: 'Light it', exact: true }).click()
  if (water_l) {
    await page.getByRole('tab', { name: 'Water, wind' }).click()
    for (let left = water_l; left > 0.05; left -= 0.1) await page.getByRole('button', { name: 'Spray 100 ml' }).click()
    return
  }
  await page.getByRole('tab', { name: 'Openings' }).click()
  const name = opening.replaceAll('_', ' ')
  await page.getByRole('slider', { name: new RegExp(`^${name}: how far open`, 'i') }).fill(String(100 * open))
}

/** One still: the picture, and under it what the app says. */
async function still(k, at) {
  await page.evaluate(() => scrollTo(0, 0))
  const picture = (await page.locator('.prop-scene').screenshot({ type: 'jpeg', quality: 82 })).toString('base64')
  const figures = await page.locator('.prop-figures dd').allTextContents()
  const rooms = await page.locator('.prop-rooms tbody tr').allTextContents()
  return { k: k + 1, clock: await page.getByRole('timer').textContent(), move: at.map(said).filter(Boolean).join('; '), picture, figures, rooms }
}

function said({ opening, open, fuel, water_l }) {
  if (fuel) return fuel === 'straw' ? '' : 'Softwood lit on straw, lower left'
  if (water_l) return `${1000 * water_l} ml of water, lower left`
  const name = opening.replaceAll('_', ' ')
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} ${open === 1 ? 'open' : open === 0 ? 'shut' : `${100 * open} % open`}`
}

/** All stills in one picture. */
async function join(all) {
  const cells = all.map(({ k, clock, move, picture, figures }) => `<figure><img src="data:image/jpeg;base64,${picture}">
    <figcaption><b>${k}</b> ${clock} ${move}<br><i>${figures.join(', ')}</i></figcaption></figure>`)
  const sheet = await browser.context.newPage() // not the app's page: its policy allows no style of ours
  await sheet.setViewportSize({ width: 1160, height: 200 })
  await sheet.setContent(`<style>body{margin:8px;display:grid;align-content:start;grid-template-columns:repeat(5,1fr);gap:10px 8px;background:#f6f2e9;color:#15130f;font:12px/1.3 system-ui}
    figure{margin:0}img{width:100%;display:block}figcaption{padding-top:4px}i{color:#57504a;font-style:normal}</style>${cells.join('')}`)
  await sheet.screenshot({ path: out, fullPage: true })
  for (const { k, clock, move, figures, rooms } of all) console.log(`${String(k).padStart(2)} ${clock} ${move}: ${figures.join(', ')} | ${rooms.join(' | ')}`)
}
