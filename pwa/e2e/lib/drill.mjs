// Doing a drill as a person does: look, answer every question, commit, go on.
import { keepOnDevice, onDevice } from './device.mjs'

/** How many scenes a set has unless one chooses otherwise. */
export const setSize = 8

/** A family of every kind of item, one for each: a set of them asks all that can be asked, and is no longer than any other. */
export const oneOfEachKind = [
  'far-window', // read_opening
  'low-in-high-out', // flow_plane
  'three-windows', // nearest_seat
  'bungalow-call', // call_stage
  'door-pulled-to', // predict_move
  'two-looks-at-a-door', // two_looks
  'pair-of-stages', // which_of_two
  'report-flashover', // call_out
]

/** Begins a set on the start screen, or goes on with the one that was left. */
export async function begin(page, press = (button) => button.click()) {
  await press(page.getByRole('button', { name: /^(Begin a set|Go on with scene)/ }).first())
}

/** Puts a set of chosen scenes on the device, as if it had been left before its first; whoever opens Drill next may go on with it. */
export function layOut(page, scenes) {
  return keepOnDevice(page, 'drill', { scenes: scenes.map(({ family, seed }) => ({ family, seed })), done: [], replies: [] })
}

/** The open scene by family and seed, to say where a test failed. */
async function openScene(page) {
  const kept = await onDevice(page, 'kept', 'drill')
  return JSON.stringify(kept?.scenes[kept.done.length] ?? null)
}

/** Waits until the picture of the next scene stands and its first question is open. */
export async function sceneReady(page) {
  await page.locator('.item-asking .scene canvas').first().waitFor({ timeout: 60_000 })
  await page.getByRole('region', { name: /^Your answers?$/ }).waitFor({ timeout: 60_000 })
}

/** Answers every question of the open scene by pressing, then commits. */
export async function answerScene(page, press = (button) => button.click()) {
  try {
    await sceneReady(page)
    const commit = page.getByRole('button', { name: 'Commit' })
    while ((await commit.count()) === 0) await answerOne(page, press)
    await sayHowSure(page, press)
    await press(commit)
    await page.getByText('Kept on this device').waitFor({ timeout: 60_000 })
  } catch (error) {
    const scene = await openScene(page).catch(() => 'a scene unknown')
    throw new Error(`${scene}: ${error.message}\n${await page.locator('main').innerText()}`, { cause: error })
  }
}

/** Leaves every question of the open scene with "cannot tell", or reports at once, up to the commit. */
export async function answerUnsure(page) {
  await sceneReady(page)
  const commit = page.getByRole('button', { name: 'Commit' })
  while (!(await commit.count())) {
    const asked = page.getByRole('region', { name: 'Your answer', exact: true })
    const question = await questionOf(asked)
    const report = asked.getByRole('button', { name: 'I would report it now' })
    await ((await report.count()) ? report : asked.getByRole('button', { name: 'Cannot tell' })).click()
    await leaves(page, question)
  }
  await sayHowSure(page)
  return commit
}

/** What is asked, with its number: no two questions of a scene share it. */
export const questionOf = (asked) => asked.getByRole('heading').first().textContent()

/** Waits until another question is open, or none: an answer is seen first and acted on in the next picture. */
export function leaves(page, question, within = { timeout: 30_000 }) {
  return page.waitForFunction((text) => document.querySelector('section[aria-label="Your answer"] h2')?.textContent !== text, question, within)
}

/** Asked wherever a choice was made. */
export async function sayHowSure(page, press = (button) => button.click()) {
  const sure = page.getByRole('group', { name: /How sure/ })
  if (await sure.count()) await press(sure.getByRole('button', { name: /Fairly/ }))
}

async function answerOne(page, press) {
  const asked = page.getByRole('region', { name: 'Your answer', exact: true })
  const question = await questionOf(asked)
  const slider = asked.getByRole('slider')
  const report = asked.getByRole('button', { name: 'I would report it now' })
  if (await report.count()) {
    await press(asked.getByRole('button', { name: 'Let it run' }))
    await page.waitForTimeout(1500)
    await press(report)
  } else if (await slider.count()) {
    await press(asked.getByRole('button', { name: 'Lower' }))
    await press(asked.getByRole('button', { name: 'Set it here' }))
  } else {
    await press(asked.locator('.choice').nth(1))
  }
  await leaves(page, question)
}

/** The button that leads from a scene explained to the next, or to the end. */
export function onward(page) {
  return page.getByRole('button', { name: /^(Next scene|See them all)$/ })
}

/** A whole set, from the start screen to its end. */
export async function wholeSet(page, press = (button) => button.click()) {
  await begin(page, press)
  for (let scene = 1; scene <= setSize; scene++) {
    await answerScene(page, press)
    await press(onward(page))
  }
  await page.getByRole('heading', { name: 'The set is done' }).waitFor()
}

/** Every event on the device. */
export const eventsOnDevice = (page) => onDevice(page, 'events')
