// A class at everyone's own pace, with one who has no phone: prediction sheets are
// printed and typed in later, the instructor calls all to compare a scene and lets
// them go on, and the report counts both. SHOTS=folder keeps pictures.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import * as on from './lib/class.mjs'
import { keep, prepare, shotsOf, useCrowd, useServer } from './lib/ready.mjs'

const shot = shotsOf('paper')
const slow = { timeout: 90_000 }
const server = useServer()
const browser = useCrowd()
const complaints = []
let board
let phone
let opened

prepare(async () => {
  board = await on.openPage(browser, complaints, { width: 1280, height: 800, name: 'board' })
  const set = await on.prepare(board.page, server, 'Two doors', [{ family: 'one-door', seed: 3 }, { family: 'two-way-door', seed: 4 }])
  opened = await on.openBoard(board.page, server, { title: 'Wednesday, own pace', set, pace: 'self' })
})

test('a sheet for every scene is there to print', async () => {
  const { page } = board
  await page.goto(`${server.url}/instructor/class/${opened.id}/sheets`)
  await page.locator('.sheet-ask').nth(6).waitFor(slow)
  assert.equal(await page.locator('.sheet-ask').count(), 7, 'four ratings of one door; flow, plane and how sure of the other')
  await on.checkScreen(page, 'prediction sheets')
  keep('paper-sheets.pdf', await page.pdf({ format: 'A4' }))
  await page.goto(`${server.url}/board/${opened.id}`)
})

test('a phone works through the set at its own pace', async () => {
  phone = await on.openPage(browser, complaints, { name: 'Kestrel' })
  await on.joinByToken(phone.page, server.url, opened.door.token, 'Kestrel')
  await board.page.getByRole('button', { name: 'Start', exact: true }).click(slow)
  await on.answer(phone.page, 0)
  await on.commit(phone.page)
  await phone.page.getByRole('button', { name: 'Next scene' }).click(slow)
  await on.answer(phone.page, 1)
  await on.commit(phone.page)
  await phone.page.getByText('You have committed every scene').waitFor(slow)
  await on.checkScreen(phone.page, 'phone, every scene committed')
  await shot(phone.page, 'all-done')
})

test('a sheet filled in on paper is typed in, for one who has no phone', async () => {
  const { page } = board
  await page.getByRole('button', { name: 'Type in a paper sheet' }).click()
  const dialog = page.locator('dialog')
  await dialog.getByLabel('Which scene?').selectOption({ index: 0 })
  await dialog.getByLabel('Call sign').fill('Dotterel')
  for (const cue of ['Volume', 'Velocity', 'Density', 'Darkness']) {
    const asked = dialog.locator('section', { has: page.getByRole('heading', { name: cue, exact: true }) })
    await asked.locator('.choice').nth(4).click(slow)
  }
  await on.checkScreen(page, 'typing in a sheet')
  await shot(page, 'typing')
  await dialog.getByRole('button', { name: 'Put it in' }).click()
  await dialog.getByText('The sheet of Dotterel is in.').waitFor(slow)
  await page.getByRole('button', { name: 'Close' }).click()
  await page.locator('.people').getByText('on paper').waitFor(slow)
  const again = { kind: 'sheet', call_sign: 'Dotterel', scene: 's1', replies: [] }
  await on.act(page, opened.id, again, 4)
})

test('all are called to one scene, and go on at their own pace after it', async () => {
  const { page } = board
  await page.locator('.scene-list > li').first().getByRole('button', { name: 'Compare the readings' }).click(slow)
  await phone.page.getByText('What the class saw').waitFor(slow)
  assert.equal(await phone.page.locator('.spread-rail').first().locator('.pile-dot').count(), 2)
  await page.getByRole('button', { name: 'Draw the wall away' }).click(slow)
  await phone.page.getByText('What would have told').waitFor(slow)
  await page.getByRole('button', { name: 'Back to their own pace' }).click(slow)
  await phone.page.getByText('You have committed every scene').waitFor(slow)
})

test('the report counts phone and paper, and is printed in either language', async () => {
  const { page } = board
  await on.act(page, opened.id, { kind: 'ended' })
  await page.goto(`${server.url}/instructor/class/${opened.id}`)
  await page.getByText('2 readings, 1 from paper').waitFor(slow)
  await shot(page, 'report')
  const read = (ending) =>
    page.evaluate(async (at) => [...new Uint8Array(await (await fetch(at)).arrayBuffer())], `/api/v1/classes/${opened.id}/report.${ending}`).then(Buffer.from)
  const [english, spanish, table] = [await read('pdf?language=en'), await read('pdf?language=es'), await read('csv?language=es')]
  for (const paper of [english, spanish]) assert.equal(paper.subarray(0, 5).toString(), '%PDF-')
  assert.ok(!english.equals(spanish))
  assert.match(table.toString(), /^\S*ENTRENAMIENTO, NO UN INCIDENTE/)
  assert.match(table.toString(), /Dotterel,2,1,/)
  keep('paper-report-en.pdf', english)
  keep('paper-report-es.pdf', spanish)
})

test('nothing was complained of', () => assert.deepEqual(complaints, []))
