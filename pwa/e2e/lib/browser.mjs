// Debian's Chromium, driven with a profile of its own: a throw-away profile
// counts as private browsing, where nothing can be installed.
import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { chromium } from 'playwright-core'

export const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium'
export const chromiumArgs = [
  '--no-sandbox',
  '--disable-gpu',
  '--no-first-run',
  '--disable-background-networking',
  '--disable-component-update',
  '--disable-sync',
]

/** One Chromium for many people, each in a context of their own. */
export function launch({ extra = [] } = {}) {
  return chromium.launch({ executablePath, args: [...chromiumArgs, ...extra] })
}

/** A phone's browser. What the page complains of is gathered in `complaints`. */
export async function openBrowser({ width = 390, height = 844, scheme = 'light', motion = 'no-preference', touch = false, extra = [] } = {}) {
  const profile = mkdtempSync(join(tmpdir(), 'lintel-profile-'))
  const context = await chromium.launchPersistentContext(profile, {
    executablePath,
    args: [...chromiumArgs, ...extra],
    viewport: { width, height },
    colorScheme: scheme,
    reducedMotion: motion,
    hasTouch: touch,
  })
  const page = context.pages()[0] ?? (await context.newPage())
  const complaints = []
  page.on('pageerror', (error) => complaints.push(error.message))
  page.on('console', (message) => {
    // A server that is gone, and plain http, are what some tests are about.
    if (message.type() === 'error' && !/Failed to load resource|WebSocket connection|Cross-Origin-Opener-Policy/.test(message.text())) {
      complaints.push(message.text())
    }
  })
  const close = async () => {
    await context.close()
    rmSync(profile, { recursive: true, force: true })
  }
  return { context, page, complaints, close }
}
