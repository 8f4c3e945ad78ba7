// A set of eight from the accessibility tree alone: what stands in the tree is
// read, and only what has a role and a name there is pressed. No element is found
// by its place or look, and no pixel is seen.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { eventsOnDevice, setSize } from './lib/drill.mjs'
import { prepare, usePhone, useServer } from './lib/ready.mjs'

const server = useServer()
const browser = usePhone({ motion: 'reduce' })
let tree
prepare(async () => {
  tree = await browser.context.newCDPSession(browser.page)
})

/** Everything in the tree that is not hidden from it, in order. */
async function read() {
  const { nodes } = await tree.send('Accessibility.getFullAXTree')
  return nodes
    .filter(({ ignored, role }) => !ignored && role)
    .map(({ role, name, properties = [], parentId, backendDOMNodeId }) => ({
      role: role.value,
      name: name?.value ?? '',
      disabled: properties.some(({ name: what, value }) => what === 'disabled' && value.value),
      parent: parentId,
      id: backendDOMNodeId,
    }))
}

const find = (nodes, role, name) => nodes.find((node) => node.role === role && name.test(node.name) && !node.disabled)

/** Waits until the tree holds a role with a name. */
async function wait(role, name, ms = 60_000) {
  for (const until = Date.now() + ms; Date.now() < until; ) {
    const nodes = await read()
    const found = find(nodes, role, name)
    if (found) return { nodes, found }
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
  const nodes = await read()
  throw new Error(`no ${role} called ${name}: there are ${nodes.map((one) => `${one.role} "${one.name}"`).join(', ').slice(0, 2000)}`)
}

/** Presses a node as assistive software does: focus, then a key. */
async function press(node, key = 'Enter') {
  await tree.send('DOM.focus', { backendNodeId: node.id })
  await browser.page.keyboard.press(key)
}

test('eight scenes are looked at, answered and understood without a picture', async () => {
  const { page } = browser
  await page.goto(`${server.url}/drill`)
  await press((await wait('button', /^Begin a set/)).found)
  for (let scene = 1; scene <= setSize; scene++) {
    await wait('region', /^Your answers?$/)
    await describedIn(await read())
    await answerAll()
    await press((await wait('button', /^Commit$/)).found)
    const { nodes } = await wait('button', /^(Next scene|See them all)$/)
    assert.ok(nodes.some(({ name }) => name === 'Kept on this device'), 'the tick is told')
    assert.ok(nodes.some(({ name }) => name === 'What would have told'), 'the reason is told')
    await press(find(nodes, 'button', /^(Next scene|See them all)$/))
  }
  await wait('heading', /^The set is done$/)
  assert.equal((await eventsOnDevice(page)).length, setSize)
})

/** The scene stands in words: from where it is seen and what shows there. */
async function describedIn(nodes) {
  for (let tries = 0; tries < 300; tries++) {
    const text = nodes.filter(({ role }) => role === 'StaticText' || role === 'paragraph').map(({ name }) => name).join(' ')
    if (/Seen from|seen from|side/.test(text) && /smoke|Smoke|shut|open|Nothing|nothing/.test(text)) return
    await new Promise((resolve) => setTimeout(resolve, 200))
    nodes = await read()
  }
  assert.fail('the scene is not in words')
}

async function answerAll() {
  for (let turn = 0; turn < 20; turn++) {
    const nodes = await read()
    if (find(nodes, 'button', /^Commit$/) || nodes.some(({ role, name }) => role === 'button' && name === 'Commit')) break
    await answerOne(nodes)
    await gone(headings(nodes))
  }
  const sure = find(await read(), 'button', /^Fairly/)
  if (sure) await press(sure)
}

/** What is asked, in the tree: its headings. */
const headings = (nodes) => nodes.filter(({ role }) => role === 'heading').map(({ name }) => name).join('; ')

/** Waits until something else is asked: an answer is acted on in the next picture. */
async function gone(asked) {
  for (let tries = 0; tries < 600; tries++) {
    if (headings(await read()) !== asked) return
    await new Promise((resolve) => setTimeout(resolve, 100))
  }
  throw new Error(`still asked after a minute: ${asked}`)
}

/** Answers are the buttons of a named group; the plane is a slider; a report is a button of its own. */
async function answerOne(nodes) {
  const report = find(nodes, 'button', /^I would report it now$/)
  if (report) return press(report)
  const slider = find(nodes, 'slider', /^Neutral plane$/)
  if (slider) {
    await press(slider, 'ArrowUp')
    return press((await wait('button', /^Set it here$/)).found)
  }
  const unsure = find(nodes, 'button', /^Cannot tell$/)
  assert.ok(unsure, 'a question can always be left with "cannot tell"')
  const answers = nodes.filter(({ role, parent }) => role === 'button' && parent === unsure.parent)
  return press(answers[1] ?? unsure)
}

test('nothing was complained of', () => assert.deepEqual(browser.complaints, []))
