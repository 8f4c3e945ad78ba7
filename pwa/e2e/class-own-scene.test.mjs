// A scene of the instructor's own: a fire lit in Prop, its moment kept, put into a
// set, played to a class, answered, and told by its own truth on phone, board, wall
// and report. SHOTS=folder keeps pictures.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import * as on from './lib/class.mjs'
import { eventsOnDevice } from './lib/drill.mjs'
import { shotsOf, useCrowd, useServer } from './lib/ready.mjs'

const shot = shotsOf('own')
const slow = { timeout: 90_000 }
const server = useServer()
const browser = useCrowd()
const complaints = []
const title = 'The box with its port open'
let board
let phone
let wall
let id

test('a moment of a fire in Prop is kept on this device', async () => {
  board = await on.openPage(browser, complaints, { width: 1280, height: 800, name: 'board' })
  const { page } = board
  await on.prepare(page, server, 'Of families alone', [{ family: 'one-door', seed: 3 }])
  await page.goto(`${server.url}/prop`)
  await page.getByRole('button', { name: 'Light it' }).click(slow)
  for (let n = 0; n < 2; n++) await page.getByRole('button', { name: /^The fire runs/ }).click()
  await page.waitForFunction(() => Number(document.querySelector('.prop-time input').value) >= 90, undefined, slow)
  await page.getByRole('button', { name: 'Keep this moment for a class' }).click()
  await page.getByLabel('Title that the class sees').fill(title)
  await on.checkScreen(page, 'keep a moment')
  await shot(page, 'keep')
  await page.getByRole('button', { name: 'Keep it' }).click()
  await page.getByRole('link', { name: 'Sets of scenes' }).click(slow)
  await page.getByRole('heading', { name: 'Sets of scenes' }).first().waitFor(slow)
})

test('a question that its fire does not answer is refused in a sentence, and another put into a set', async () => {
  const { page } = board
  await page.goto(`${server.url}/instructor/sets/new`)
  await page.getByLabel('Title of the set').fill('Our own box')
  const own = page.locator('.add-scene', { has: page.getByRole('heading', { name: 'Add a scene of your own' }) })
  await own.getByLabel('What is asked').selectOption('nearest_seat')
  await own.getByRole('button', { name: 'Add it' }).click()
  await own.getByRole('alert').getByText('nothing here is fair to ask').waitFor(slow)
  assert.equal(await page.locator('.planned').count(), 0)
  await own.getByLabel('What is asked').selectOption('read_opening')
  await own.getByLabel('At which opening').selectOption('port_lower_left')
  await own.getByRole('button', { name: 'Add it' }).click()
  await page.locator('.planned', { hasText: title }).getByText('Own scene. Read one opening: Port lower left').waitFor(slow)
  await page.getByRole('button', { name: `Look at ${title}` }).click()
  await page.locator('dialog .scene canvas').waitFor(slow)
  await shot(page, 'look')
  await page.getByRole('button', { name: 'Close' }).click()
  await on.checkScreen(page, 'set with a scene of its own')
  await shot(page, 'set')
  await page.getByRole('button', { name: 'Save the set' }).click()
  await page.waitForURL(/\/instructor\/sets\/(?!new)/, slow)
})

test('the server refuses one that is bad or too large, saying where, and keeps the set as it was', async () => {
  const { page } = board
  const held = (await on.api(page, 'GET', '/sets')).sets.find((one) => one.title === 'Our own box')
  const spoilt = async (change, where) => {
    const set = structuredClone(held)
    change(set.scenes[0].own)
    const { error } = await on.api(page, 'PUT', `/sets/${set.id}`, { title: set.title, scenes: set.scenes }, 4)
    assert.equal(error.where, `scenes[0].own.${where}`)
    assert.ok(error.what && error.do)
  }
  await spoilt((own) => (own.scenario.openings[0].width_m = -1), 'scenario.openings[0].width_m')
  await spoilt((own) => (own.scenario.moves = Array.from({ length: 121 }, () => ({ t_s: 1, opening: 'port_lower_left', open: 1 }))), 'scenario.moves')
  await spoilt((own) => (own.opening = 'gate'), 'opening')
  assert.deepEqual((await on.api(page, 'GET', '/sets')).sets.find((one) => one.title === 'Our own box'), held)
})

test('phone and wall play the fire that was kept', async () => {
  const set = (await on.api(board.page, 'GET', '/sets')).sets.find((one) => one.title === 'Our own box')
  const opened = await on.openBoard(board.page, server, { title: 'Recruits at the box', set: set.id })
  id = opened.id
  wall = await on.openPage(browser, complaints, { width: 1920, height: 1080, name: 'wall' })
  await wall.page.goto(`${server.url}/projector/${id}#${opened.projector}`)
  phone = await on.openPage(browser, complaints, { name: 'Kestrel' })
  await on.joinByToken(phone.page, server.url, opened.door.token, 'Kestrel')
  await on.act(board.page, id, { kind: 'started' })
  await phone.page.locator('.scene canvas').waitFor(slow)
  await wall.page.locator('.wall .scene canvas').waitFor(slow)
  await shot(wall.page, 'wall-watch')
  await on.act(board.page, id, { kind: 'stepped', to: 'commit', scene: 's1' })
  await phone.page.getByText(/^Look at the .*lower left/).waitFor(slow)
  await shot(phone.page, 'phone-commit')
  await on.answer(phone.page, 4)
  await on.commit(phone.page)
  await phone.page.getByText('Kept, and with the class').waitFor(slow)
  await board.page.getByText('1 of 1 committed').waitFor(slow)
})

test('server and phone found the same truth, each by its own run of that fire', async () => {
  const { scene } = await on.api(board.page, 'GET', `/classes/${id}/scenes/s1`)
  const { body } = (await eventsOnDevice(phone.page)).find((event) => event.body.class?.id === id)
  assert.deepEqual(body.answer.own, scene.own)
  assert.deepEqual(body.verdict.parts.map(({ truth }) => truth), scene.truth)
  assert.ok(body.verdict.parts.some(({ right }) => !right), 'the heaviest reading is not right everywhere')
})

test('the truth stands on phone, wall and report, with what it rests on', async () => {
  for (const to of ['compare', 'cutaway']) await on.act(board.page, id, { kind: 'stepped', to, scene: 's1' })
  await wall.page.getByText('An instructor sketched this scene').waitFor(slow)
  await phone.page.getByText('An instructor sketched this scene').waitFor(slow)
  await on.checkScreen(phone.page, 'phone, cutaway of a scene of their own')
  await on.checkScreen(wall.page, 'wall, cutaway of a scene of their own')
  await shot(wall.page, 'wall-cutaway')
  await shot(phone.page, 'phone-cutaway')
  await on.act(board.page, id, { kind: 'ended' })
  await board.page.goto(`${server.url}/instructor/class/${id}`)
  await board.page.getByRole('heading', { name: `1. ${title}` }).waitFor(slow)
  await shot(board.page, 'report')
  const csv = await board.page.evaluate(async (at) => (await fetch(at)).text(), `/api/v1/classes/${id}/report.csv`)
  assert.match(csv, new RegExp(`Kestrel,1,1,${title},own,`))
})

test('nothing was complained of', () => assert.deepEqual(complaints, []))
