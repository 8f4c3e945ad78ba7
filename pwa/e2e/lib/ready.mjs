// What a file of tests begins with and ends: the real server, and browsers on it.
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { after, before } from 'node:test'
import { launch, openBrowser } from './browser.mjs'
import { Server } from './server.mjs'

let begun = Promise.resolve()

/** What must be done before the tests, after what was asked for before it: the runner itself begins all of a file's at once. */
export function prepare(what) {
  before(() => (begun = begun.catch(() => {}).then(what)))
}

/** The server, from before the first test to after the last. */
export function useServer() {
  const server = new Server()
  prepare(() => server.start())
  after(() => server.kill())
  return server
}

/** A phone's browser, as openBrowser gives it once the tests run. */
export function usePhone(view) {
  const phone = {}
  prepare(async () => void Object.assign(phone, await openBrowser(view)))
  after(() => phone.close?.())
  return phone
}

/** One Chromium for many people, each in a context of their own. */
export function useCrowd(options) {
  let chromium
  prepare(async () => {
    chromium = await launch(options)
  })
  after(() => chromium?.close())
  return { newContext: (view) => chromium.newContext(view) }
}

/** Keeps a picture of a page where SHOTS names a folder. */
export async function shot(page, name, options = {}) {
  const folder = process.env.SHOTS
  if (!folder) return
  mkdirSync(folder, { recursive: true })
  await page.screenshot({ path: join(folder, `${name}.png`), ...options })
}
