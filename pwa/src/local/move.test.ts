import 'fake-indexeddb/auto'
import { expect, test } from 'vitest'
import type { QuizEvent } from '../wire.gen'
import { openDatabase } from './db'
import { Journal } from './journal'
import { Moving } from './move'
import type { Outcome, Server } from './server'
import { DiskShelf } from './shelf'
import { Sync } from './sync'

/** A server as its API is written down (server/httpapi/README.md), with one device. */
class OneServer {
  secret = ''
  device = ''
  events: QuizEvent[] = []
  token = ''
  lost = 0
  /** Claims that are carried out and whose answer is lost. */
  unanswered = 0

  fetch = async (path: string, init: RequestInit): Promise<Response> => {
    const body = init.body ? (JSON.parse(init.body as string) as Record<string, string>) : {}
    const ours = new Headers(init.headers).get('authorization') === `Device ${this.device}:${this.secret}`
    if (path === '/api/v1/devices/move') return ours ? Response.json({ v: 1, token: (this.token = 'once'), until_ms: 1 }) : new Response(null, { status: 401 })
    if (path === '/api/v1/devices/claim') {
      if (!this.token || body['token'] !== this.token) return new Response(null, { status: 404 })
      this.token = ''
      this.secret = body['secret']!
      if (this.unanswered-- > 0) throw new TypeError('failed to fetch')
      return Response.json({ v: 1, device: this.device, call_sign: 'Engine 3', acked: this.events.length })
    }
    if (!ours) return new Response(null, { status: 401 })
    if (this.lost-- > 0) throw new TypeError('failed to fetch')
    const after = Number(new URL(path, 'http://x').searchParams.get('after'))
    const records = this.events.slice(after, after + 2)
    return Response.json({ v: 1, records: records.map((one) => ({ ...one, received_ms: 9 })), ...(after + 2 < this.events.length && { next: after + 2 }) })
  }
}

const newJournal = async (name: string) => new Journal(new DiskShelf(await openDatabase(name)))

test('a history moves whole, its secret does not, and the old phone sends no more', async () => {
  const [old, fresh, server] = [await newJournal('old'), await newJournal('new'), new OneServer()]
  for (let n = 0; n < 5; n++) await old.append('note', '0.1.0', { n })
  const before = await old.self()
  await old.acknowledge(5)
  Object.assign(server, { device: before.device, secret: before.secret, events: await old.events() })

  const offer = await new Moving(old, server.fetch).offer()
  server.lost = 1 // one page is asked for twice
  expect(await new Moving(fresh, server.fetch).take(offer!)).toEqual({ kind: 'taken', callSign: before.callSign })
  expect(await new Moving(fresh, server.fetch).take(offer!)).toEqual({ kind: 'refused' })

  const after = await fresh.self()
  expect(after).toMatchObject({ device: before.device, next: 6, acked: 5, registered: true })
  expect(after.secret).not.toBe(before.secret)
  expect(await fresh.events()).toEqual(await old.events())
  expect((await fresh.append('note', '0.1.0', {})).seq).toBe(6)

  const closed: Server = { register: async (): Promise<Outcome> => ({ kind: 'unknown' }), send: async () => ({ kind: 'unknown' }) }
  await old.append('note', '0.1.0', {})
  expect(await new Sync(old, closed, () => {}).wake()).toBe('moved')
  expect((await old.self()).device).toBe(before.device)
})

/** A phone whose three events the server holds, a new one, and the code between them. */
async function handingOver(name: string) {
  const [old, fresh, server] = [await newJournal(`${name} old`), await newJournal(`${name} new`), new OneServer()]
  for (let n = 0; n < 3; n++) await old.append('note', '0.1.0', { n })
  await old.acknowledge(3)
  const { device, secret, callSign } = await old.self()
  Object.assign(server, { device, secret, events: await old.events() })
  const offer = (await new Moving(old, server.fetch).offer())!
  return { old, fresh, server, offer, device, callSign }
}

test('no answer, and the old phone wiped at once: the new one has all when it is opened again', async () => {
  const { old, fresh, server, offer, device, callSign } = await handingOver('wiped')
  server.unanswered = 1
  const cut = new Moving(fresh, (path, init) => (path.includes('records') ? Promise.reject(new TypeError('failed to fetch')) : server.fetch(path, init)))
  expect(await cut.take(offer)).toEqual({ kind: 'waiting' })
  await old.erase()

  expect((await fresh.self()).device).not.toBe(device)
  expect(await new Moving(fresh, server.fetch).resume()).toEqual({ kind: 'taken', callSign })
  expect(await fresh.self()).toMatchObject({ device, callSign, next: 4, acked: 3, registered: true })
  expect((await fresh.self()).taking).toBeUndefined()
  expect(await fresh.events()).toEqual(server.events)
})

test('a claim that never arrived leaves the old phone the owner, and is given up when the code is surely over', async () => {
  const { old, fresh, server, offer } = await handingOver('never')
  const away = new Moving(fresh, () => Promise.reject(new TypeError('failed to fetch')))
  expect(await away.take(offer)).toEqual({ kind: 'waiting' })
  expect(await new Moving(fresh, server.fetch).resume(), 'it may still be under way').toEqual({ kind: 'waiting' })
  const { taking } = await fresh.self()
  await fresh.taking({ ...taking!, since: taking!.since - 200_000 })
  expect(await new Moving(fresh, server.fetch).resume()).toEqual({ kind: 'refused' })
  expect((await fresh.self()).taking).toBeUndefined()
  expect(await new Moving(old, server.fetch).offer()).toBeDefined()
})
