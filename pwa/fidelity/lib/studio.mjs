// Opens the scene player: the front end's own source served by vite on
// 127.0.0.1, in a headless Chromium. Nothing of it is part of a built app.
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { chromium } from 'playwright-core'
import { createServer } from 'vite'

const root = fileURLToPath(new URL('../../', import.meta.url))

/** A browser page with the scene player in it, and a folder for its photographs; `density` pixels to a point of its screen. */
export async function openStudio({ density = 2 } = {}) {
  const server = await createServer({
    root, configFile: false, logLevel: 'error', server: { port: 0, host: '127.0.0.1', hmr: false, watch: null, ws: false },
    oxc: { jsx: { runtime: 'automatic', importSource: 'preact' } },
  })
  await server.listen()
  const browser = await chromium.launch({ executablePath: process.env.CHROMIUM ?? '/usr/bin/chromium', args: ['--no-sandbox', '--disable-gpu'] })
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, deviceScaleFactor: density })
  const page = await context.newPage()
  const complaints = []
  page.on('pageerror', (error) => complaints.push(error.message))
  await page.goto(`${server.resolvedUrls.local[0]}fidelity/player/index.html`, { timeout: 120_000 }) // a busy machine takes its time to serve the source
  await page.waitForFunction('globalThis.lintelPlayer !== undefined', undefined, { timeout: 60_000 })
  const folder = mkdtempSync(join(tmpdir(), 'lintel-fidelity-'))
  return {
    page, complaints, folder, taken: 0,
    newPage: () => context.newPage(),
    /** A module of the front end, for what a script needs of it. */
    module: (path) => server.ssrLoadModule(path),
    async close() {
      await browser.close()
      await server.close()
      rmSync(folder, { recursive: true, force: true })
    },
  }
}

/** Photographs one take over black and over white; returns a sighting for the instrument. */
export async function photograph(studio, take) {
  studio.taken++ // two may be looked at while the next is drawn
  const { black, white, ...known } = await studio.page.evaluate((one) => globalThis.lintelPlayer.photograph(one), take)
  const [blackPath, whitePath] = [['black', black], ['white', white]].map(([name, data]) => {
    const path = join(studio.folder, `${studio.taken % 4} ${name}.png`)
    writeFileSync(path, Buffer.from(data, 'base64'))
    return path
  })
  return { ...known, black: blackPath, white: whitePath }
}
