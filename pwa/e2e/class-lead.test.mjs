// Leading a class by the keys of a keyboard and from a tablet: a rehearsal with two
// recruits on one phone, the look put off and its end taken away, a step taken back,
// the door locked, scenes reordered, a key disagreed with, the suggested scene added,
// and the wall as the back row sees it. SHOTS=folder keeps pictures.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import * as on from './lib/class.mjs'
import { eventsOnDevice } from './lib/drill.mjs'
import { prepare, shotsOf, useCrowd, useServer } from './lib/ready.mjs'

const shot = shotsOf('lead')
const slow = { timeout: 90_000 }
const server = useServer()
const browser = useCrowd()
const complaints = []
let board
let phone
let wall
let opened

prepare(async () => {
  board = await on.openPage(browser, complaints, { width: 1280, height: 800, name: 'board' })
  const set = await on.prepare(board.page, server, 'Two doors', [
    { family: 'two-way-door', seed: 4, look_s: 60 },
    { family: 'one-door', seed: 3, look_s: 600 },
  ])
  opened = await on.openBoard(board.page, server, { title: 'Tuesday, B shift', set, rehearsal: true })
  wall = await on.openPage(browser, complaints, { width: 1920, height: 1080, name: 'wall' })
  await wall.page.goto(`${server.url}/projector/${opened.id}#${opened.projector}`)
})

/** Comes to a button by Tab alone and presses Enter on it, as one without a mouse does. */
async function byKey(page, name) {
  await page.getByRole('button', { name }).first().waitFor(slow)
  for (let n = 0; n < 80; n++) {
    await page.keyboard.press('Tab')
    const at = await page.evaluate(() => {
      const one = document.activeElement
      return one?.tagName === 'BUTTON' ? (one.getAttribute('aria-label') ?? one.textContent.trim()) : ''
    })
    if (typeof name === 'string' ? at === name : name.test(at)) return page.keyboard.press('Enter')
  }
  throw new Error(`no Tab leads to ${name}`)
}

const heard = (page) => page.getByRole('progressbar', { name: 'Time to look' })

test('it is said to be a rehearsal on the board, on the wall and on the phone', async () => {
  phone = await on.openPage(browser, complaints, { name: 'Kestrel', scheme: 'dark' })
  await on.joinByToken(phone.page, server.url, opened.door.token, 'Kestrel')
  for (const { page } of [board, phone]) await page.getByText('Rehearsal: nothing here is recorded.').waitFor(slow)
  await wall.page.getByText('Rehearsal').waitFor(slow)
})

test('a second recruit joins the phone; a locked class lets nobody else in, and unlocked it does', async () => {
  await phone.page.getByRole('button', { name: 'Someone else on this phone too' }).click()
  await phone.page.getByLabel('Call sign').fill('Ruff')
  await phone.page.getByRole('button', { name: 'Join' }).click()
  await phone.page.getByText('You are Ruff').waitFor(slow)
  await byKey(board.page, 'How to join')
  await byKey(board.page, 'Lock: nobody new joins')
  await wall.page.getByText('Nobody new can join now.').waitFor(slow)
  const late = await on.openPage(browser, complaints, { name: 'late' })
  await late.page.goto(`${server.url}/class#${opened.door.token}`)
  await late.page.getByRole('button', { name: 'Join' }).click(slow)
  await late.page.getByRole('alert').waitFor(slow)
  await shot(late.page, 'locked')
  await byKey(board.page, 'Unlock: others may join')
  await wall.page.getByText('Point the camera at this code').waitFor(slow)
  await late.page.getByRole('button', { name: 'Join' }).click()
  await late.page.getByText(/^You are /).waitFor(slow)
  await late.context.close()
  await board.page.keyboard.press('Escape')
})

test('the scenes are put in another order', async () => {
  const titles = () => board.page.locator('.scene-list strong').allTextContents()
  const [first, second] = await titles()
  await byKey(board.page, /^Move .* later$/)
  await board.page.waitForFunction((was) => document.querySelector('.scene-list strong').textContent !== was, first, slow)
  assert.deepEqual((await titles()).map((said) => said.slice(3)), [second, first].map((said) => said.slice(3)))
})

test('a step is taken back within five seconds, and not after them', async () => {
  const pressed = pressWhenThere(board.page, 'Take that back')
  await byKey(board.page, 'Start')
  await pressed
  await on.atStep(board.page, 'Gather')
  await on.atStep(phone.page, 'Gather')
  await byKey(board.page, 'Start')
  await on.atStep(board.page, 'Watch')
  await board.page.getByRole('button', { name: 'Take that back' }).waitFor({ state: 'detached', ...slow })
  const { error } = await on.act(board.page, opened.id, { kind: 'undone' }, 4)
  assert.match(error.what, /cannot be taken back/)
  await on.atStep(board.page, 'Watch')
})

/** Presses a button as soon as it is there, from within the page: the five seconds pass on a busy machine too. */
function pressWhenThere(page, name) {
  return page.evaluate(
    (said) =>
      new Promise((pressed) => {
        const watch = new MutationObserver(() => {
          const button = [...document.querySelectorAll('button')].find((one) => one.textContent.trim() === said)
          if (!button) return
          watch.disconnect()
          button.click()
          pressed()
        })
        watch.observe(document.body, { childList: true, subtree: true })
      }),
    name,
  )
}

test('the look is put off by half a minute, and its end taken away', async () => {
  const left = async () => Number.parseInt(await heard(board.page).getAttribute('aria-valuetext'), 10)
  const [had, at] = [await left(), Date.now()]
  await byKey(board.page, '30 s longer')
  await board.page.waitForFunction((was) => Number.parseInt(document.querySelector('[role=progressbar]').getAttribute('aria-valuetext'), 10) > was, had, slow)
  const passed = (Date.now() - at) / 1000
  // What a busy page shows is seconds old; none of them makes half a minute.
  assert.ok(Math.abs((await left()) - (had + 30 - passed)) < 12, `${await left()} s are left of ${had} and 30, ${passed} s later`)
  await heard(wall.page).waitFor(slow)
  await byKey(board.page, 'No end to the look')
  await heard(wall.page).waitFor({ state: 'detached', ...slow })
  await heard(board.page).waitFor({ state: 'detached', ...slow })
})

test('both recruits on the phone commit in turn', async () => {
  await byKey(board.page, 'Ask for the readings')
  await on.answer(phone.page, 0)
  await on.beSure(phone.page)
  await phone.page.getByRole('button', { name: 'Commit', exact: true }).click()
  await phone.page.getByRole('heading', { name: 'Hand the phone to Ruff' }).waitFor(slow)
  await shot(phone.page, 'hand-over')
  await phone.page.getByRole('button', { name: 'I am Ruff' }).click()
  await on.answer(phone.page, 4)
  await on.commit(phone.page)
  await board.page.getByText('2 of 3 committed').waitFor(slow)
  await shot(board.page, 'board-commit')
})

test('compared and opened by key, the wall is read from the back row', async () => {
  await byKey(board.page, 'Compare the readings')
  await wall.page.locator('.spread-rail').first().waitFor(slow)
  await readable(wall.page)
  await shot(wall.page, 'wall-compare')
  await byKey(board.page, 'Draw the wall away')
  await wall.page.getByText('What would have told').waitFor(slow)
  await readable(wall.page)
  await shot(wall.page, 'wall-cutaway')
  const below = await wall.page.locator('.wall-outcome').evaluate((one) => one.scrollHeight - one.clientHeight)
  assert.ok(below <= 1, `${below} px of the reason lie below the wall`)
})

/**
 * No text on the wall is smaller than 20 px on a screen of 1080 lines: chosen by us,
 * a fiftieth of the height, as signs are read from fifty times their letters' size.
 */
async function readable(page) {
  const small = await page.evaluate(() => {
    const walk = document.createTreeWalker(document.querySelector('.wall'), NodeFilter.SHOW_TEXT)
    const found = []
    for (let node = walk.nextNode(); node; node = walk.nextNode()) {
      const { parentElement: at } = node
      const box = at.getBoundingClientRect()
      if (!node.textContent.trim() || box.width < 2 || box.height < 2 || at.closest('.scene')) continue
      const size = Number.parseFloat(getComputedStyle(at).fontSize)
      if (size < 20) found.push(`${size} px: ${node.textContent.trim().slice(0, 40)}`)
    }
    return found
  })
  assert.deepEqual(small, [])
  const below = await page.locator('.wall').evaluate((one) => one.scrollHeight - one.clientHeight)
  assert.ok(below <= 1, `${below} px lie below the wall, which nobody scrolls`)
}

test('a key is disagreed with, though the tablet is turned meanwhile, and the scene that is suggested comes into the class', async () => {
  await byKey(board.page, 'I disagree with this key')
  const why = board.page.getByLabel('Why, in a sentence')
  await why.fill('Steam stood in front of it')
  const upright = board.page.viewportSize()
  for (const turned of [{ width: 700, height: 1000 }, upright]) {
    await board.page.setViewportSize(turned)
    assert.equal(await why.inputValue(), 'Steam stood in front of it', 'what was half written')
  }
  await byKey(board.page, 'Disagree')
  await board.page.getByText('Gannet disagrees with the key').waitFor(slow)
  const count = await board.page.locator('.scene-list > li').count()
  const suggested = (await board.page.getByText(/^Next, for /).textContent()).replace(/^Next, for [^:]*: /, '')
  await byKey(board.page, 'Add it to the scenes')
  await board.page.locator('.scene-list > li').nth(count).getByText(suggested).waitFor(slow)
  await shot(board.page, 'board-cutaway')
})

test('the class is handed to a tablet by a code that works once, and taken back', async () => {
  const tablet = await on.openPage(browser, complaints, { width: 1024, height: 768, name: 'tablet' })
  await tablet.page.addInitScript(() => localStorage.setItem('lintel.theme', 'outdoor'))
  await tablet.page.goto(`${server.url}/board`) // the app is there before the code, which holds for one minute
  const offered = board.page.waitForResponse((one) => one.url().endsWith('/lead') && one.request().method() === 'POST')
  await board.page.getByRole('button', { name: 'Hand the class to a phone or tablet' }).click()
  const { token } = await (await offered).json()
  await tablet.page.goto(`${server.url}/board#${token}`)
  await board.page.getByRole('img', { name: 'Code to lead this class' }).waitFor(slow)
  await tablet.page.getByRole('button', { name: /^Next scene/ }).click(slow)
  await on.atStep(phone.page, 'Watch')
  await on.checkScreen(tablet.page, 'board on a tablet outdoors')
  await shot(tablet.page, 'tablet')
  const second = await on.openPage(browser, complaints, { name: 'second' })
  await second.page.goto(`${server.url}/board#${token}`)
  await second.page.getByText('That code is not valid any more').waitFor(slow)
  await second.context.close()
  await board.page.getByRole('button', { name: 'Close' }).click()
  await board.page.getByRole('button', { name: 'Hand the class to a phone or tablet' }).click()
  await board.page.getByRole('button', { name: 'Take it back' }).click(slow)
  await tablet.page.getByText('Sign in on the laptop').waitFor(slow)
  await tablet.context.close()
})

test('the report says that it was a rehearsal, and so does every answer given in it', async () => {
  await on.act(board.page, opened.id, { kind: 'ended' })
  const csv = await board.page.evaluate(async (at) => (await fetch(at)).text(), `/api/v1/classes/${opened.id}/report.csv`)
  assert.match(csv.split('\r\n')[0], /rehearsal/)
  const given = (await eventsOnDevice(phone.page)).filter(({ kind }) => kind === 'answer')
  assert.equal(given.length, 2)
  assert.ok(given.every(({ body }) => body.class.rehearsal === true), 'an answer of a rehearsal says so, and is left out of every record')
})

test('nothing was complained of', () => assert.deepEqual(complaints, []))
