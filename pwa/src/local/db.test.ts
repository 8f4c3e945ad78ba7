import 'fake-indexeddb/auto'
import { openDB } from 'idb'
import { expect, test } from 'vitest'
import { openDatabase, schemaVersion } from './db'
import { Journal } from './journal'
import { DiskShelf } from './shelf'

/** A device as the first version left it: these lines are frozen, whatever the app does since. */
async function firstVersion(name: string): Promise<void> {
  const db = await openDB(name, 1, {
    upgrade(fresh) {
      fresh.createObjectStore('events', { keyPath: 'seq' })
      fresh.createObjectStore('kept')
    },
  })
  const device = 'a'.repeat(32)
  const event = { v: 1, id: 'b'.repeat(32), device, seq: 1, engine: '0.1.0', t_client: 1, kind: 'answer', body: { answer: {} } }
  await db.put('events', event)
  await db.put('kept', { device, secret: 'c'.repeat(64), callSign: 'Engine 3', registered: true, next: 2, acked: 1 }, 'self')
  db.close()
}

test('a device left at the first schema keeps its history and goes on counting', async () => {
  await firstVersion('old')
  const db = await openDatabase('old')
  expect(db.version).toBe(schemaVersion)
  const journal = new Journal(new DiskShelf(db))
  expect(await journal.self()).toMatchObject({ callSign: 'Engine 3', acked: 1 })
  expect((await journal.append('note', '0.2.0', {})).seq).toBe(2)
  expect(await db.getAllFromIndex('events', 'kind', 'answer')).toHaveLength(1)
})

test('a page of an older version lets go when a newer one opens', async () => {
  const old = await openDatabase('both')
  const newer = await openDB('both', schemaVersion + 1)
  expect(newer.version).toBe(schemaVersion + 1)
  await expect(old.get('kept', 'self')).rejects.toThrow()
  await expect(openDatabase('both')).rejects.toThrow(/version/i)
})
