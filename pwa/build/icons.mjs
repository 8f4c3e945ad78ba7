// Draws the app's PNG icons from public/icons/mark.svg with a headless
// Chromium. Run by hand after the mark changes: node build/icons.mjs
import { readFileSync, writeFileSync } from 'node:fs'
import { chromium } from 'playwright-core'

const executablePath = process.env.CHROMIUM ?? '/usr/bin/chromium'
const icons = new URL('../public/icons/', import.meta.url)
const mark = readFileSync(new URL('mark.svg', icons), 'utf8')

// A maskable icon keeps what matters in the middle 80 % (W3C Web App Manifest,
// "icon masks"); its paper runs to the edge.
const sizes = [
  { name: 'mark-180.png', size: 180, inset: 0 },
  { name: 'mark-192.png', size: 192, inset: 0 },
  { name: 'mark-512.png', size: 512, inset: 0 },
  { name: 'mark-mask-512.png', size: 512, inset: 0.12 },
]

const browser = await chromium.launch({ executablePath, args: ['--no-sandbox', '--disable-gpu'] })
for (const { name, size, inset } of sizes) {
  const page = await browser.newPage({ viewport: { width: size, height: size } })
  const pad = Math.round(size * inset)
  const paper = inset > 0 ? '#f6f2e9' : 'transparent'
  await page.setContent(
    `<style>body{margin:0;background:${paper}}svg{display:block;margin:${pad}px;width:${size - 2 * pad}px}</style>${mark}`,
  )
  writeFileSync(new URL(name, icons), await page.screenshot({ omitBackground: true }))
}
await browser.close()
