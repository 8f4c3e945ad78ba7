// What a file of tests begins with and ends: the real server, and browsers on it.
import { mkdirSync, writeFileSync } from 'node:fs'
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

/** Where pictures are kept: the folder that SHOTS names, if it names one. */
function folder() {
  const named = process.env.SHOTS
  if (named) mkdirSync(named, { recursive: true })
  return named
}

/** Keeps a picture of a page. */
export async function shot(page, name, options = {}) {
  const at = folder()
  if (at) await page.screenshot({ path: join(at, `${name}.png`), ...options })
}

/** The same for a file whose pictures begin alike. */
export const shotsOf = (what) => (page, name) => shot(page, `${what}-${name}`)

/** Keeps a file beside the pictures. */
export function keep(name, bytes) {
  const at = folder()
  if (at) writeFileSync(join(at, name), bytes)
}
