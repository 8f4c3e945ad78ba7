// The browser is killed in the middle of a drill, again and again: whatever was
// ticked before is there afterwards. KILLS=100 for the long run.
import assert from 'node:assert/strict'
import { spawn } from 'node:child_process'
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { after, before, test } from 'node:test'
import { chromium } from 'playwright-core'
import { chromiumArgs, executablePath } from './lib/browser.mjs'
import { answerUnsure, eventsOnDevice } from './lib/drill.mjs'
import { Server } from './lib/server.mjs'

const kills = Number(process.env.KILLS ?? 20)
const times = 2 // the latest kill, in commits of this machine's own pace: most of them early: before, within and after the write

const server = new Server()
const profile = mkdtempSync(join(tmpdir(), 'lintel-kills-'))
let running

before(() => server.start())
after(async () => {
  await die()
  await server.kill()
  rmSync(profile, { recursive: true, force: true })
})

/** A browser of our own over the same profile, reached by its debugging port. */
async function live() {
  const child = spawn(executablePath, [...chromiumArgs, '--headless=new', '--remote-debugging-port=0', `--user-data-dir=${profile}`, 'about:blank'])
  const address = await new Promise((resolve, reject) => {
    child.stderr.on('data', (text) => {
      const found = /DevTools listening on (ws:\S+)/.exec(String(text))
      if (found) resolve(found[1])
    })
    child.once('exit', (code) => reject(new Error(`the browser stopped with ${code}`)))
  })
  const browser = await chromium.connectOverCDP(address)
  running = { child, browser }
  const [context] = browser.contexts()
  return context.pages()[0] ?? (await context.newPage())
}

/** Signal 9 to the browser's main process: its renderers and its storage go with it. */
async function die() {
  if (!running) return
  const { child, browser } = running
  running = undefined
  const gone = child.exitCode === null ? new Promise((resolve) => child.once('exit', resolve)) : undefined
  child.kill('SIGKILL')
  await gone
  await browser.close().catch(() => {})
}

test(`${kills} kills mid-drill lose nothing that was ticked`, async () => {
  let [ticked, between, pace] = [0, 0, undefined]
  for (let kill = 0; kill < kills; kill++) {
    const page = await reopened(ticked)
    ticked = (await eventsOnDevice(page)).length
    const { seen, took } = await commitAndBeKilled(page, pace)
    pace ??= took
    if (seen) ticked++
    else between++
  }
  await reopened(ticked)
  console.log(`# ${kills} kills: ${ticked} there at the end, ${between} killed before the tick, a tick takes ${Math.round(pace)} ms`)
  assert.ok(between < kills, 'some commits were ticked before the kill')
})

/** Drill opened once more after a kill: what was ticked is there, in order and without a gap. */
async function reopened(ticked) {
  const page = await live()
  await page.goto(`${server.url}/drill`)
  await page.getByRole('button', { name: /^Begin a set/ }).waitFor()
  const held = await eventsOnDevice(page)
  assert.ok(held.length >= ticked, `${ticked} were ticked, ${held.length} are there`)
  assert.deepEqual(held.map(({ seq }) => seq), held.map((_, n) => n + 1))
  return page
}

/**
 * Answers the open scene with "cannot tell", commits, and kills within a moment;
 * seen where the tick stood before. The first kill knows no pace: it waits for
 * its tick, and took is how long that was, in ms.
 */
async function commitAndBeKilled(page, pace) {
  const open = page.getByRole('button', { name: /^Go on with scene/ })
  await ((await open.count()) ? open : page.getByRole('button', { name: /^Begin a set/ })).click()
  await (await answerUnsure(page)).click()
  const pressed = performance.now()
  const tick = page.getByText('Kept on this device')
  if (pace === undefined) await tick.waitFor({ timeout: 60_000 })
  else await page.waitForTimeout(Math.random() ** 2 * times * pace)
  const took = performance.now() - pressed
  const seen = (await tick.count()) > 0
  await die()
  return { seen, took }
}
