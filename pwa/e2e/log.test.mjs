// The Log of someone who has practised for weeks: what it adds up to, weakest first,
// in both languages and on the narrowest phone.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { checkScreen } from './lib/check.mjs'
import { prepare, usePhone, useServer } from './lib/ready.mjs'
import { practise, putOnDevice } from './lib/record.mjs'

const answers = Number(process.env.ANSWERS ?? 32)
const server = useServer()
const browser = usePhone({ width: 320, motion: 'reduce' })
let record
prepare(async () => {
  record = await practise({ answers })
  await browser.page.goto(`${server.url}/log`)
  await browser.page.getByRole('heading', { name: 'Your data' }).waitFor()
  await putOnDevice(browser.page, record)
})

for (const language of ['en', 'es']) {
  test(`a record of ${answers} answers is added up and runs over no edge (${language})`, async () => {
    const { page } = browser
    await page.evaluate((one) => localStorage.setItem('lintel.language', one), language)
    await page.goto(`${server.url}/log`)
    await page.locator('.calibration').waitFor({ timeout: 120_000 })
    const said = language === 'en' ? `${record.events.length} scenes answered.` : `${record.events.length} escenas respondidas.`
    await page.getByText(said).waitFor()
    assert.ok((await page.locator('.cue-plot').count()) > 3, 'a plot for each skill')
    for (const width of [320, 1280]) {
      await page.setViewportSize({ width, height: 844 })
      await checkScreen(page, `the Log in ${language} at ${width} px`)
    }
    await page.setViewportSize({ width: 320, height: 844 })
  })
}

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
