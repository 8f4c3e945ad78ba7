// Has the page auditor judge screens as they come to a phone the first time:
// performance, accessibility, best practices; of each the lowest. Control in the
// same run: a page of one heading and one sentence. Prints one JSON line.
//
//   node pwa/bench/lighthouse.mjs http://127.0.0.1:PORT/
import { createServer } from 'node:http'
import { launch } from 'chrome-launcher'
import lighthouse from 'lighthouse'

const [address] = process.argv.slice(2)
const SCREENS = ['', 'size-up', 'drill']
const CATEGORIES = ['performance', 'accessibility', 'best-practices']

const chrome = await launch({
  chromePath: process.env.CHROMIUM ?? '/usr/bin/chromium',
  chromeFlags: ['--headless=new', '--no-sandbox', '--disable-gpu', '--disable-background-networking', '--disable-component-update', '--disable-sync'],
})

// An auditor that lost a message of its browser judges nothing of a page: that is
// no fault of the page, and it looks again. Chosen by us.
const TRIES = 3

async function audit(url) {
  let judged
  for (let k = 0; k < TRIES && !(judged && CATEGORIES.every((name) => judged[name] !== null)); k++) judged = await auditOnce(url)
  return judged
}

async function auditOnce(url) {
  const { lhr } = await lighthouse(url, { port: chrome.port, output: 'json', logLevel: 'silent', onlyCategories: CATEGORIES })
  const scores = Object.fromEntries(CATEGORIES.map((name) => [name, lhr.categories[name].score === null ? null : Math.round(100 * lhr.categories[name].score)]))
  const audits = Object.values(lhr.audits)
  const failed = audits.filter(({ score, scoreDisplayMode }) => score !== null && score < 1 && scoreDisplayMode === 'binary').map(({ id }) => id)
  const unjudged = audits.filter(({ scoreDisplayMode }) => scoreDisplayMode === 'error').map(({ id, errorMessage }) => `${id} (${errorMessage})`)
  return { ...scores, failed, unjudged, version: lhr.lighthouseVersion }
}

const plain = createServer((_, reply) => reply.writeHead(200, { 'content-type': 'text/html' }).end(
  '<!doctype html><html lang="en"><meta charset="utf-8"><meta name="viewport" content="width=device-width"><title>Plain</title><main><h1>Plain</h1><p>One sentence.</p></main></html>',
))
await new Promise((done) => { plain.listen(0, '127.0.0.1', () => done()) })

const pages = []
for (const screen of SCREENS) pages.push({ screen: screen || 'home', ...(await audit(new URL(screen, address).href)) })
const lowest = (name) => (pages.some((page) => page[name] === null) ? null : Math.min(...pages.map((page) => page[name])))
const ours = {
  ...Object.fromEntries(CATEGORIES.map((name) => [name, lowest(name)])),
  failed: pages.flatMap(({ screen, failed }) => failed.map((id) => `${id} on ${screen}`)),
  unjudged: pages.flatMap(({ screen, unjudged }) => unjudged.map((what) => `${what} on ${screen}`)), version: pages[0].version,
}
const control = await audit(`http://127.0.0.1:${plain.address().port}/`)
console.log(JSON.stringify({ ours, pages, control }))
plain.close()
chrome.kill()
process.exit()
