// A record moves from one phone to another by a code that works once: through the
// real server, between two browsers.
import assert from 'node:assert/strict'
import { test } from 'node:test'
import { onDevice } from './lib/device.mjs'
import { answerScene, begin, eventsOnDevice } from './lib/drill.mjs'
import { usePhone, useServer } from './lib/ready.mjs'

const server = useServer()
const old = usePhone({ motion: 'reduce' })
const fresh = usePhone({ motion: 'reduce' })

/** The server does as it is asked, and nobody hears of it. */
async function loseTheAnswer(route) {
  await route.fetch()
  await route.abort()
}

const selfOn = (page) => onDevice(page, 'kept', 'self')

test('the record, its call sign and its numbering go over; the secret does not', async () => {
  await old.page.goto(`${server.url}/drill`)
  await begin(old.page)
  await answerScene(old.page)
  await old.page.getByText(/not synced/).waitFor({ state: 'detached' })
  await old.page.goto(`${server.url}/log`)
  const answered = old.page.waitForResponse(/devices\/move/)
  await old.page.getByRole('button', { name: 'Move to another phone' }).click()
  await old.page.getByRole('img', { name: 'Code that moves this record' }).waitFor()
  const { token } = await (await answered).json()
  const owner = await selfOn(old.page)
  assert.ok(!JSON.stringify(await (await answered).json()).includes(owner.secret))

  const code = [token, owner.device, encodeURIComponent(owner.callSign)].join('/')
  await fresh.page.route('**/devices/claim', loseTheAnswer)
  await fresh.page.route('**/records?*', (route) => route.abort())
  await fresh.page.goto(`${server.url}/log#move=${code}`)
  await fresh.page.getByRole('button', { name: 'Take it over' }).click()
  await fresh.page.getByText('The server has not answered yet.').waitFor()
  await fresh.page.unrouteAll()
  await fresh.page.reload() // as if its battery had been empty in between
  await fresh.page.getByText(`This phone is now ${owner.callSign}.`).waitFor()
  assert.equal(new URL(fresh.page.url()).hash, '', 'the token stands in no address')
  const now = await selfOn(fresh.page)
  assert.deepEqual([now.device, now.next, now.acked], [owner.device, 2, 1])
  assert.notEqual(now.secret, owner.secret)
  assert.deepEqual(await eventsOnDevice(fresh.page), await eventsOnDevice(old.page))
})

test('the new phone goes on, the old one is told and sends no more', async () => {
  await fresh.page.goto(`${server.url}/drill`)
  await begin(fresh.page)
  await answerScene(fresh.page)
  await fresh.page.getByText(/not synced/).waitFor({ state: 'detached' })
  await old.page.getByRole('button', { name: 'Close' }).last().click()
  await old.page.goto(`${server.url}/drill`)
  await begin(old.page)
  await answerScene(old.page)
  await old.page.goto(`${server.url}/log`)
  await old.page.getByText('This record has moved to another phone.').waitFor()
  assert.deepEqual(server.records().map(({ seq }) => seq), [1, 2])
})

test('nothing was complained of', () => assert.deepEqual([...old.complaints, ...fresh.complaints], []))
