// A whole class: twelve phones, a board and a projector against the real server.
// One phone loses its network and comes back, one is loaded anew with answers half
// given, one is closed and opened again, one came by the laptop's own network
// name over plain http, and two people share another. Whatever was committed must
// stand in the report exactly once. SHOTS=folder keeps pictures.
import assert from 'node:assert/strict'
import { mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { after, before, test } from 'node:test'
import { launch } from './lib/browser.mjs'
import * as on from './lib/class.mjs'
import { Server } from './lib/server.mjs'

const shots = process.env.SHOTS
if (shots) mkdirSync(shots, { recursive: true })

const slow = { timeout: 90_000 }
// The first six each have something happen to them; see what follows.
const callSigns = ['Kestrel', 'Heron', 'Plover', 'Osprey', 'Curlew', 'Avocet', 'Dunlin', 'Lapwing', 'Merlin', 'Sandpiper', 'Tern', 'Wigeon']
const scenes = [
  { family: 'one-door', seed: 3 },
  { family: 'low-in-high-out', seed: 3 },
]
const title = 'Saltmarsh recruits, week 3'

const server = new Server()
const complaints = []
const phones = []
const [cutOff, reloaded, reopened, shared, typed, plain] = [0, 1, 2, 3, 4, 5]
const all = callSigns.length + 1 // two share a phone
let browser
let board
let wall
let id
let door

before(async () => {
  await server.start()
  browser = await launch({ extra: ['--host-resolver-rules=MAP laptop.test 127.0.0.1'] })
})
after(async () => {
  await browser?.close()
  await server.kill()
})

/** Everyone at once, a few at a time: two cores make thirteen scenes. */
async function everyone(list, run, atOnce = 4) {
  const waiting = [...list.entries()]
  const next = async () => {
    for (let one = waiting.shift(); one; one = waiting.shift()) await run(one[1], one[0])
  }
  await Promise.all(Array.from({ length: atOnce }, next))
}

async function shot(page, name) {
  if (shots) await on.inSight(page, () => page.screenshot({ path: join(shots, `class-${name}.png`) }))
}

/** Presses at once, without waiting for a busy machine to lay the page out. */
const press = (name) => board.page.getByRole('button', { name, exact: true }).dispatchEvent('click')
const { atStep } = on

test('the first instructor is made with the set-up code, over loopback only', async () => {
  board = await on.openPage(browser, complaints, { width: 1280, height: 800, name: 'board' })
  await board.page.goto(`${server.url.replace('127.0.0.1', 'laptop.test')}/instructor`)
  await board.page.getByText('a pass phrase must not cross the network in the open').waitFor(slow)
  await on.checkScreen(board.page, 'no sign-in over plain http')
  await board.page.goto(`${server.url}/instructor`)
  await board.page.getByLabel('Set-up code').waitFor(slow)
  await on.checkScreen(board.page, 'set-up')
  await on.setUp(board.page, server.url, server.setUpCode)
})

test('a set is built and a class of it opened', async () => {
  await on.buildSet(board.page, server.url, 'Inlets and outlets', scenes)
  await on.checkScreen(board.page, 'set builder')
  await shot(board.page, 'set')
  id = await on.openClass(board.page, server.url, title)
  await board.page.getByRole('button', { name: 'How to join' }).click()
  await board.page.getByRole('link', { name: 'Open the projector in a new window' }).waitFor(slow)
  door = (await listed()).door
  await shot(board.page, 'door')
  await on.checkScreen(board.page, 'how to join')
  await board.page.getByRole('button', { name: 'Close' }).click()
})

/** The class as its instructor's own browser is told of it. */
async function listed() {
  const answer = await board.page.evaluate(async (at) => (await fetch(at)).json(), `/api/v1/classes/${id}`)
  return answer.class
}

test('the projector opens by its link, without signing in', async () => {
  wall = await on.openPage(browser, complaints, { width: 1280, height: 800, name: 'projector', inPocket: true })
  await wall.page.goto(`${server.url}/projector/${id}#${(await listed()).projector}`)
  await wall.page.getByText(door.code.slice(0, 4)).waitFor(slow)
  await on.checkScreen(wall.page, 'projector, gather')
  await shot(wall.page, 'projector-gather')
})

test('twelve phones join: by camera, by typing, and one over plain http', async () => {
  await everyone(callSigns, async (callSign, n) => {
    const phone = await on.openPage(browser, complaints, { name: callSign, scheme: n % 2 ? 'dark' : 'light', inPocket: true })
    phones[n] = phone
    if (n === plain) await on.joinByCode(phone.page, server.url.replace('127.0.0.1', 'laptop.test'), door.code, callSign)
    else if (n === typed) await on.joinByCode(phone.page, server.url, door.code, callSign)
    else await on.joinByToken(phone.page, server.url, door.token, callSign)
  })
  assert.equal(await phones[plain].page.evaluate(() => isSecureContext), false)
  await wall.page.getByText(`${callSigns.length} people are here`).waitFor(slow)
  await on.checkScreen(phones[0].page, 'phone, gather')
  await shot(phones[0].page, 'phone-gather')
})

test('a second person joins on the same phone', async () => {
  const { page } = phones[shared]
  await page.getByRole('button', { name: 'Someone else on this phone too' }).click()
  await page.getByLabel('Call sign').fill('Ruff')
  await page.getByRole('button', { name: 'Join' }).click()
  await page.getByText('You are Ruff').waitFor(slow)
  await board.page.getByText(`${all} of ${all} here`).waitFor(slow)
})

test('a wrong code says what every wrong code says', async () => {
  const stranger = await on.openPage(browser, complaints, { name: 'stranger', width: 320, height: 640 })
  await stranger.page.goto(`${server.url}/class`)
  await stranger.page.getByLabel('Class code').fill('22222222')
  await stranger.page.getByRole('button', { name: 'Join' }).click()
  await stranger.page.getByText('No class takes that code now').waitFor(slow)
  await on.checkScreen(stranger.page, 'join at 320 px')
  await stranger.context.close()
})

test('all look at the same scene, for as long as they are given', async () => {
  await press('Start')
  await atStep(board.page, 'Watch')
  await board.page.getByRole('button', { name: '30 s longer' }).click()
  await everyone(phones, async ({ page }) => atStep(page, 'Watch'))
  await wall.page.locator('.wall .scene canvas').waitFor(slow)
  await on.inSight(wall.page)
  await wall.page.getByRole('progressbar', { name: 'Time to look' }).waitFor(slow)
  await shot(wall.page, 'projector-watch')
  await on.checkScreen(wall.page, 'projector, watch')
  await phones[0].page.locator('.scene canvas').waitFor(slow)
  await on.inSight(phones[0].page)
  await shot(phones[0].page, 'phone-watch')
  await on.checkScreen(phones[0].page, 'phone, watch')
})

test('everyone commits; three are cut off meanwhile and come back where they were', async () => {
  await press('Ask for the readings')
  await atStep(phones[0].page, 'Commit')
  await on.checkScreen(phones[1].page, 'phone, commit')
  await Promise.all([networkGone(phones[cutOff]), loadedAnew(phones[reloaded]), closedAndOpened(phones[reopened])])
  await shareAPhone(phones[shared])
  await everyone(phones.slice(shared + 1), ({ page }, n) => answerAndCommit(page, n))
  await board.page.getByText(`${all} of ${all} committed`).waitFor(slow)
  await board.page.locator('.people').getByText('Kestrel').waitFor(slow)
  await shot(board.page, 'board-commit')
  await on.checkScreen(board.page, 'board, commit')
  await phones[0].page.getByText('Kept, and with the class').waitFor(slow)
  await shot(phones[0].page, 'phone-kept')
})

async function answerAndCommit(page, nth) {
  await on.answer(page, nth)
  await on.commit(page)
}

/** Commits with the network gone; it arrives when the network is back. */
async function networkGone({ page, context }) {
  await on.answer(page, 1)
  await context.setOffline(true)
  await on.commit(page)
  await page.getByText('Kept on this phone').waitFor(slow)
  await page.getByText('No connection to the class').waitFor(slow)
  await shot(page, 'phone-away')
  await context.setOffline(false)
}

/** Half answered, loaded anew, and gone on with. */
async function loadedAnew({ page }) {
  await page.locator('.item-asking .scene canvas').waitFor(slow)
  await on.answerOne(page, 2)
  await page.reload()
  await page.getByText('2 of 4').waitFor(slow)
  await answerAndCommit(page, 2)
}

/** Committed, closed, and opened at the plain address of Class. */
async function closedAndOpened(phone) {
  await answerAndCommit(phone.page, 3)
  await phone.page.close()
  phone.page = await phone.context.newPage()
  on.listen(phone.page, complaints, phone.name)
  await phone.page.goto(`${server.url}/class`)
  await phone.page.getByText('Kept, and with the class').waitFor(slow)
}

/** Two on one phone: each answers in turn, and neither sees the other's. */
async function shareAPhone({ page }) {
  await on.answer(page, 0)
  await on.beSure(page)
  await page.getByRole('button', { name: 'Commit', exact: true }).click()
  await page.getByRole('button', { name: 'I am Ruff' }).click(slow)
  await answerAndCommit(page, 4)
}

test('the spread is shown on the rails of the answers, and the wall shows no name', async () => {
  await press('Compare the readings')
  await wall.page.locator('.spread-rail').first().waitFor(slow)
  await phones[0].page.getByText('What the class saw').waitFor(slow)
  await phones[0].page.locator('.spread-own').first().waitFor(slow)
  assert.equal(await phones[0].page.locator('.spread-rail').first().locator('.pile-dot').count(), all)
  const said = await wall.page.locator('body').innerText()
  for (const callSign of [...callSigns, 'Ruff', 'Gannet']) assert.ok(!said.includes(callSign), `${callSign} is on the wall`)
  await on.checkScreen(wall.page, 'projector, compare')
  await on.checkScreen(phones[0].page, 'phone, compare')
  await on.checkScreen(phones[1].page, 'phone, compare, dark')
  await shot(wall.page, 'projector-compare')
  await shot(phones[0].page, 'phone-compare')
  await shot(board.page, 'board-compare')
})

test('the wall is drawn away; the truth and the reason stand beside it', async () => {
  await press('Draw the wall away')
  await wall.page.getByText('What would have told').waitFor(slow)
  await phones[0].page.getByText('What would have told').waitFor(slow)
  await phones[0].page.getByText('It was', { exact: true }).first().waitFor(slow)
  await on.checkScreen(wall.page, 'projector, cutaway')
  await on.checkScreen(phones[0].page, 'phone, cutaway')
  await shot(wall.page, 'projector-cutaway')
  await shot(phones[0].page, 'phone-cutaway')
})

test('the instructor disagrees with a key, with a reason', async () => {
  await board.page.getByRole('button', { name: 'I disagree with this key' }).first().click()
  await board.page.getByLabel('Why, in a sentence').fill('Steam stood in front of it')
  await press('Disagree')
  await board.page.getByText('Gannet disagrees with the key').waitFor(slow)
  await board.page.getByText(/^Furthest off so far/).waitFor(slow)
  await board.page.getByRole('button', { name: /^Kestrel/ }).click()
  await board.page.getByText('Kestrel, for you alone').waitFor(slow)
  await board.page.locator('.given').first().waitFor(slow)
  await shot(board.page, 'board-detail')
  await on.checkScreen(board.page, 'board, private detail')
  await board.page.getByRole('button', { name: 'Close' }).click()
})

test('the class is handed to a tablet by a one-time code, which leads the second scene', async () => {
  const tablet = await on.openPage(browser, complaints, { width: 1024, height: 768, name: 'tablet' })
  const lan = server.url.replace('127.0.0.1', 'laptop.test')
  await tablet.page.goto(`${lan}/board`) // the app is there before the code, which holds for one minute
  const { token } = await on.api(board.page, 'POST', `/classes/${id}/lead`, {})
  await tablet.page.goto(`${lan}/board#${token}`)
  await tablet.page.getByRole('button', { name: /^Next scene/ }).click(slow)
  await everyone(phones, async ({ page }) => page.getByText('Scene 2 of 2').waitFor(slow))
  await tablet.page.getByRole('button', { name: 'Ask for the readings' }).click()
  await everyone(phones, (phone, n) => (n === shared ? shareAPhone(phone) : answerAndCommit(phone.page, n)))
  await tablet.page.getByText(`${all} of ${all} committed`).waitFor(slow)
  await tablet.page.getByRole('button', { name: 'Compare the readings' }).click()
  await tablet.page.getByRole('button', { name: 'Draw the wall away' }).click(slow)
  await on.checkScreen(tablet.page, 'board on a tablet')
  await shot(tablet.page, 'board-tablet')
  await tablet.context.close()
})

test('the class ends; every committed answer is in the report exactly once', async () => {
  await press('End the class')
  await press('End it')
  await everyone(phones, async ({ page }) => page.getByText('The class has ended').waitFor(slow))
  const { report } = await board.page.evaluate(async (at) => (await fetch(at)).json(), `/api/v1/classes/${id}/report`)
  const inReport = report.people.flatMap(({ call_sign, answers }) =>
    answers.map(({ scene, parts }) => spell(call_sign, scene, parts.map(({ given }) => given))),
  )
  const onPhones = []
  for (const [n, { page }] of phones.entries()) {
    for (const { scene, place, replies } of await on.committedOn(page, id)) {
      onPhones.push(spell(place === 'b' ? 'Ruff' : callSigns[n], scene, replies))
    }
  }
  assert.equal(onPhones.length, 2 * all)
  assert.deepEqual(inReport.toSorted(), onPhones.toSorted())
})

function spell(callSign, scene, replies) {
  const said = replies.map((reply) => JSON.stringify(Object.fromEntries(Object.entries(reply).toSorted())))
  return `${callSign} ${scene} ${said.toSorted().join(' ')}`
}

test('the report is there to read, to save as a table and to print', async () => {
  await board.page.goto(`${server.url}/instructor/class/${id}`)
  await board.page.getByText('Cue by cue, furthest off first').waitFor(slow)
  await board.page.getByText('Gannet disagrees with the key').waitFor(slow)
  await on.checkScreen(board.page, 'report')
  await shot(board.page, 'report')
  for (const [ending, begins] of [['csv', ''], ['pdf', '%PDF-']]) {
    const text = await board.page.evaluate(async (at) => (await fetch(at)).text(), `/api/v1/classes/${id}/report.${ending}`)
    assert.ok(text.length > 200 && text.startsWith(begins), `a report as ${ending}`)
  }
  await board.page.goto(`${server.url}/instructor/class/${id}/sheets`)
  await board.page.locator('.sheet-ask').first().waitFor(slow)
  await on.checkScreen(board.page, 'prediction sheets')
})

test('a phone of another version is told to update first', async () => {
  const { page } = phones[typed]
  await page.evaluate(() => {
    const member = JSON.parse(localStorage.getItem('lintel.class'))
    localStorage.setItem('lintel.class', JSON.stringify({ ...member, content: 'older' }))
  })
  await page.reload()
  await page.getByRole('heading', { name: 'This phone has another version' }).waitFor(slow)
  await on.checkScreen(page, 'update first')
})

test('a roster comes in as a table, a double is refused by its line, and a place is claimed by its own code', async () => {
  const { page } = board
  await page.goto(`${server.url}/instructor/rosters/new`)
  await page.getByLabel('Title of the roster').fill('Week 3')
  const lines = page.getByLabel('Or paste the lines here')
  await lines.fill('call_sign,personnel\nGodwit,1001\nKnot,1002\nGodwit,1003\n')
  await press('Make the roster')
  await page.getByText('line 4 has the call sign of line 2 again').waitFor(slow)
  await lines.fill('call_sign,personnel\nGodwit,1001\nKnot,1002\n')
  await press('Make the roster')
  await page.waitForURL(/\/rosters\/(?!new)/, slow)
  await page.getByText('not claimed yet').first().waitFor(slow)
  await on.checkScreen(page, 'roster')
  await shot(page, 'roster')
  await page.getByRole('link', { name: 'Print personal codes' }).click()
  await page.getByRole('button', { name: 'Make the codes' }).click()
  await page.getByRole('img', { name: 'Personal code of Knot' }).waitFor(slow)
  await on.checkScreen(page, 'personal codes')
  await claimed(await personalCode())
})

/** A personal code for the first place, as the sheet holds it. */
function personalCode() {
  return board.page.evaluate(async () => {
    const { rosters } = await (await fetch('/api/v1/rosters')).json()
    const at = `/api/v1/rosters/${rosters[0].id}/seats/${rosters[0].seats[0].id}/claim`
    const answer = await fetch(at, { method: 'POST', headers: { 'content-type': 'application/json' }, body: '{"v":1}' })
    return (await answer.json()).token
  })
}

async function claimed(code) {
  const { page } = phones[cutOff]
  await page.goto(`${server.url}/class/claim#${code}`)
  await page.getByText('This phone is now the place of Godwit.').waitFor(slow)
  await on.checkScreen(page, 'claim')
  await page.goto(`${server.url}/class`)
  await page.goto(`${server.url}/class/claim#${code}`)
  await page.getByText('This personal code is not valid any more').waitFor(slow)
}

test('a second instructor is invited, and who did what is on record', async () => {
  const { page } = board
  await page.goto(`${server.url}/instructor/people`)
  await page.getByRole('button', { name: 'Invite: Instructor' }).click()
  await page.getByText(/^Code: /).waitFor(slow)
  await page.locator('.deeds li').first().waitFor(slow)
  await on.checkScreen(page, 'instructors')
  await shot(page, 'instructors')
  const code = (await page.getByText(/^Code: /).textContent()).replace('Code: ', '')
  await page.getByRole('button', { name: 'Sign out' }).click()
  await page.getByText('I have an invitation').click()
  await page.getByLabel('Code', { exact: true }).fill(code)
  await page.getByLabel('Call sign, for an invitation').fill('Whimbrel')
  await page.getByLabel('Your new pass phrase').fill('air comes in where the fire is fed')
  await on.checkScreen(page, 'sign in')
  await page.getByRole('button', { name: 'Use the code' }).click()
  await page.getByText('Whimbrel, Instructor').waitFor(slow)
})

test('nothing was complained of', () => assert.deepEqual(complaints, []))
