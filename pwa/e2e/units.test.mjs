// The units of a page: those of the device's region until a person chooses others
// in the Log; and what the label of the fire model says when it is pressed.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { useCrowd, useServer } from './lib/ready.mjs'

const server = useServer()
const browser = useCrowd()

async function open(locale) {
  const context = await browser.newContext({ viewport: { width: 390, height: 844 }, locale, serviceWorkers: 'block' })
  context.setDefaultTimeout(90_000)
  return context.newPage()
}

async function onTheBench(page) {
  await page.goto(`${server.url}/prop`)
  await page.getByRole('button', { name: 'Light it', exact: true }).waitFor()
  await page.getByRole('button', { name: 'Draw the wall away' }).click()
  await page.locator('.prop-rooms tbody tr').first().waitFor()
  return (await page.locator('.prop-bench').innerText()).replaceAll('\u00a0', ' ')
}

test('a device of the United States begins with US units, and may choose metric', async () => {
  const page = await open('en-US')
  const said = await onTheBench(page)
  assert.match(said, /68 °F/)
  assert.match(said, /4\.4 lb of softwood/)
  assert.doesNotMatch(said, /°C/)
  await page.goto(`${server.url}/log`)
  await page.getByRole('button', { name: /^Metric/ }).click()
  const metric = await onTheBench(page)
  assert.match(metric, /20 °C/)
  assert.match(metric, /2 kg of softwood/)
  assert.doesNotMatch(metric, /°F/)
  await page.context().close()
})

test('any other device begins with metric units', async () => {
  const page = await open('en-GB')
  assert.match(await onTheBench(page), /20 °C/)
  await page.context().close()
})

test('the label of the fire model says how many lines of its table hold', async () => {
  const page = await open('en-GB')
  await page.goto(`${server.url}/prop`)
  const label = page.getByText('Model not yet validated')
  await label.waitFor()
  const why = page.getByText(/\d+ of the \d+ lines that it must pass hold today/)
  assert.equal(await why.isVisible(), false)
  await label.click()
  await why.waitFor()
  await page.context().close()
})

test('what a fire does is told in the language and the units of the page', async () => {
  const page = await open('es-US')
  await page.goto(`${server.url}/prop`)
  await page.getByRole('button', { name: 'Encender', exact: true }).click()
  await page.getByRole('button', { name: 'Retirar la pared', exact: true }).click()
  for (let k = 0; k < 2; k++) await page.getByRole('button', { name: /veces más deprisa/ }).first().click()
  const event = page.locator('.prop-events li').first()
  await event.waitFor()
  const said = (await event.innerText()).replaceAll('\u00a0', ' ')
  assert.match(said, /^\d+:\d\d Flashover, .* Capa superior a \d{3,4} °F, \d+ kW\/m² en el suelo\.$/)
  assert.doesNotMatch(said, /°C|cause\/|upper|floor/)
  await page.context().close()
})
