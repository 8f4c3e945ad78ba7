import 'fake-indexeddb/auto'
import { beforeEach, expect, test } from 'vitest'
import { openDatabase } from './db'
import { Journal } from './journal'
import { randomHex } from './random'
import { DiskShelf } from './shelf'

let journal: Journal
let count = 0
let name = ''

beforeEach(async () => {
  name = `journal-${count++}`
  journal = new Journal(new DiskShelf(await openDatabase(name)), { now: () => 1_700_000_000_000, hex: randomHex })
})

test('events are numbered from 1 without a gap, however they race', async () => {
  await Promise.all(Array.from({ length: 40 }, (_, n) => journal.append('note', '0.1.0', { n })))
  const events = await journal.events()
  expect(events.map((event) => event.seq)).toEqual(Array.from({ length: 40 }, (_, n) => n + 1))
  expect(new Set(events.map((event) => event.id)).size).toBe(40)
  expect(new Set(events.map((event) => event.device)).size).toBe(1)
})

test('two tabs share one numbering', async () => {
  const other = new Journal(new DiskShelf(await openDatabase(name)))
  await Promise.all(
    Array.from({ length: 20 }, (_, n) => (n % 2 ? journal : other).append('note', '0.1.0', { n })),
  )
  expect((await journal.events()).map((event) => event.seq)).toEqual(Array.from({ length: 20 }, (_, n) => n + 1))
})

test('the envelope has the fixed shape', async () => {
  const event = await journal.append('note', '0.1.0', { text: 'wind backed' })
  expect(Object.keys(event).toSorted()).toEqual(['body', 'device', 'engine', 'id', 'kind', 'seq', 't_client', 'v'])
  expect(event.id).toMatch(/^[0-9a-f]{32}$/)
  expect(event.device).toMatch(/^[0-9a-f]{32}$/)
  expect((await journal.self()).secret).toMatch(/^[0-9a-f]{64}$/)
})

test('an event whose body cannot be kept takes no number', async () => {
  await journal.append('note', '0.1.0', {})
  await expect(journal.append('note', '0.1.0', { bad: () => 0 })).rejects.toThrow()
  expect((await journal.append('note', '0.1.0', {})).seq).toBe(2)
})

test('acknowledgement never moves backward and never past the history', async () => {
  for (let n = 0; n < 5; n++) await journal.append('note', '0.1.0', {})
  await journal.acknowledge(3)
  await journal.acknowledge(2)
  expect(await journal.unsynced()).toBe(2)
  await journal.acknowledge(99)
  expect(await journal.unsynced()).toBe(0)
})

test('a batch stays within its bytes but always holds one event', async () => {
  for (let n = 0; n < 3; n++) await journal.append('note', '0.1.0', { text: 'x'.repeat(1000) })
  expect(await journal.batch(100, 2600)).toHaveLength(2)
  expect(await journal.batch(100, 10)).toHaveLength(1)
  expect(await journal.batch(1, 1e9)).toHaveLength(1)
})

test('a new identity keeps the events, their numbers and ids', async () => {
  const first = await journal.append('note', '0.1.0', {})
  await journal.acknowledge(1)
  await journal.renew()
  const [event] = await journal.events()
  expect(event?.device).not.toBe(first.device)
  expect(event).toMatchObject({ id: first.id, seq: 1 })
  expect(await journal.unsynced()).toBe(1)
})

test('erasing forgets the events and the identity', async () => {
  const first = await journal.append('note', '0.1.0', {})
  await journal.erase()
  expect(await journal.events()).toEqual([])
  expect((await journal.append('note', '0.1.0', {})).device).not.toBe(first.device)
})
