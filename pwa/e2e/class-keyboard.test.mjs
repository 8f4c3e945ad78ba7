// A whole class on a phone with a keyboard and no pointer: joined by the typed code,
// led and at one's own pace, two people on one phone, and out again. The board starts,
// compares and disagrees by key too. Wherever Tab leads, the focus is seen.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import * as on from './lib/class.mjs'
import { leaves, questionOf } from './lib/drill.mjs'
import { pressOn, tabTo, typeInto } from './lib/keys.mjs'
import { prepare, shotsOf, useCrowd, useServer } from './lib/ready.mjs'

const shot = shotsOf('keys')
const slow = { timeout: 90_000 }
const server = useServer()
const browser = useCrowd()
const complaints = []
let board
let page // the phone's
let set
let led

prepare(async () => {
  board = (await on.openPage(browser, complaints, { width: 1280, height: 800, name: 'board' })).page
  set = await on.prepare(board, server, 'Two doors', [{ family: 'two-way-door', seed: 4 }, { family: 'one-door', seed: 3 }])
  led = await on.openBoard(board, server, { title: 'By key', set })
  const other = await on.openPage(browser, complaints, { name: 'other' })
  await on.joinByCode(other.page, server.url, led.door.code, 'Knot')
  await other.context.close()
  page = (await on.openPage(browser, complaints, { name: 'phone' })).page
})

test('what is typed stays when the device’s own call sign comes late', async () => {
  const late = await on.openPage(browser, complaints, { name: 'late' })
  await late.context.addInitScript(() => {
    // A disk that answers when it is told to.
    const told = new Promise((tell) => (globalThis.letDiskAnswer = tell))
    const listen = EventTarget.prototype.addEventListener
    IDBOpenDBRequest.prototype.addEventListener = function (kind, hear, ...rest) {
      return listen.call(this, kind, kind === 'success' ? (event) => void told.then(() => hear(event)) : hear, ...rest)
    }
  })
  for (const [keys, stands] of [[['K', 'n'], /^Kn$/], [['K', 'Backspace'], /^$/], [[], /./]]) {
    await late.page.goto(`${server.url}/class`)
    const field = late.page.getByLabel('Call sign')
    await field.focus(slow)
    for (const key of keys) await late.page.keyboard.press(key)
    assert.equal(await field.inputValue(), keys.includes('n') ? 'Kn' : '', 'the disk has not answered yet')
    await late.page.evaluate(() => globalThis.letDiskAnswer())
    if (keys.length === 0) await late.page.waitForFunction((input) => input.value !== '', await field.elementHandle(), slow)
    else await late.page.waitForTimeout(1000) // for what must not come
    assert.match(await field.inputValue(), stands, `after ${keys.join(' ') || 'no key'}`)
  }
  await late.context.close()
})

test('a phone joins by code; a call sign that somebody has is refused in one sentence', async () => {
  await joinByKey(led.door.code, 'knot')
  await page.getByText('Somebody in this class has that call sign already').waitFor(slow)
  await on.checkScreen(page, 'a call sign that is taken')
  await shot(page, 'taken')
  await typeInto(page, 'Call sign', 'Kestrel')
  await page.keyboard.press('Enter')
  await page.getByText('You are Kestrel').waitFor(slow)
  await pressOn(page, 'Someone else on this phone too')
  await typeInto(page, 'Call sign', 'Ruff')
  await page.keyboard.press('Enter')
  await page.getByText('You are Ruff').waitFor(slow)
})

/** Joins by the code on the wall and a call sign, typed. */
async function joinByKey(code, callSign) {
  await page.goto(`${server.url}/class`)
  await page.getByLabel('Class code').waitFor(slow)
  await typeInto(page, 'Class code', code.toLowerCase())
  await typeInto(page, 'Call sign', callSign)
  await page.keyboard.press('Enter')
}

test('both on the phone commit in turn', async () => {
  await pressOn(board, 'Start')
  await on.atStep(page, 'Watch')
  await pressOn(board, 'Ask for the readings')
  await on.atStep(page, 'Commit')
  await answerByKey('Kestrel')
  await page.getByRole('heading', { name: 'Hand the phone to Ruff' }).waitFor(slow)
  await pressOn(page, 'I am Ruff', { within: 12 })
  await answerByKey('Ruff')
  await page.getByText('Kept, and with the class').waitFor(slow)
  await shot(page, 'kept')
})

/** Answers whatever is asked and commits it. From one answer to the next it is a few presses of Tab, never round the page. */
async function answerByKey(whose) {
  await page.locator('.item-asking .scene canvas').first().waitFor(slow)
  const asked = page.getByRole('region', { name: 'Your answer', exact: true })
  await asked.waitFor(slow)
  let within = 30 // from the top of the page
  while (await asked.count()) {
    const question = await questionOf(asked)
    const at = await tabTo(page, ({ look, role, tag }) => /\bchoice\b/.test(look) || role === 'slider' || tag === 'INPUT', { within })
    if (at.role === 'slider') await page.keyboard.press('ArrowDown')
    await (at.role === 'slider' ? pressOn(page, 'Set it here', { within }) : page.keyboard.press('Enter'))
    await leaves(page, question, slow)
    within = 6
  }
  const sure = page.getByRole('group', { name: /How sure/ })
  if (await sure.count()) await pressOn(page, /^Fairly/, { key: 'Space', within: 20 })
  await pressOn(page, 'Commit', { within: 20 })
  await page.waitForFunction(() => !document.querySelector('.item-asking'), undefined, slow).catch(() => assert.fail(`${whose} did not commit`))
}

test('compared and opened, the phone is read by key; the board disagrees and the phone says so', async () => {
  await pressOn(board, 'Compare the readings')
  await page.getByText('What the class saw').waitFor(slow)
  await readToTheEnd('the spread')
  await pressOn(board, 'Draw the wall away')
  await page.getByText('What would have told').waitFor(slow)
  await readToTheEnd('the truth')
  await pressOn(board, 'I disagree with this key', { within: 80 })
  await typeInto(board, 'Why, in a sentence', 'Steam stood in front of it')
  await pressOn(board, 'Disagree')
  await page.getByText('The instructor disagrees with the key here').first().waitFor(slow)
  await shot(page, 'cutaway')
})

/** The keys that scroll do so, whatever had the focus before the class went on. */
async function readToTheEnd(what) {
  await page.keyboard.press('Control+End')
  await page.waitForFunction(() => {
    const { scrollHeight, clientHeight, scrollTop } = document.scrollingElement
    return scrollHeight - clientHeight - scrollTop < 2
  }, undefined, slow).catch(() => assert.fail(`the end of ${what} is not reached`))
}

test('one leaves the class, and may think again', async () => {
  await pressOn(board, 'End the class', { within: 80 })
  await pressOn(board, 'End it')
  await page.getByText('The class has ended').waitFor(slow)
  await pressOn(page, 'Leave this class on this phone')
  await page.getByRole('dialog').waitFor(slow)
  await page.keyboard.press('Escape')
  await page.getByRole('dialog').waitFor({ state: 'detached', ...slow })
  assert.equal(await page.evaluate(() => document.activeElement.textContent), 'Leave this class on this phone', 'the focus goes back to where it was')
  await pressOn(page, 'Leave this class on this phone')
  await page.getByRole('dialog').waitFor(slow)
  await pressOn(page, 'Leave', { within: 3 })
  await page.getByLabel('Class code').waitFor(slow)
})

test('a set is worked through at one’s own pace', async () => {
  const own = await on.openBoard(board, server, { title: 'By key, own pace', set, pace: 'self' })
  await joinByKey(own.door.code, 'Kestrel')
  await page.getByText('You are Kestrel').waitFor(slow)
  await pressOn(board, 'Start')
  await answerByKey('Kestrel, first')
  await pressOn(page, 'Next scene', { within: 12 })
  await answerByKey('Kestrel, second')
  await page.getByText('You have committed every scene').waitFor(slow)
  await shot(page, 'all-done')
})

test('nothing was complained of', () => assert.deepEqual(complaints, []))
