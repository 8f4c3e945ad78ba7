import { openDB, type DBSchema, type IDBPDatabase, type IDBPTransaction, type StoreNames } from 'idb'
import type { QuizEvent } from '../wire.gen'

interface Schema extends DBSchema {
  /** One's own events, by sequence number; kept after they were synced, for the Log. */
  events: { key: number; value: QuizEvent; indexes: { kind: string } }
  /** Single values: who we are, the open drill, the open size-up. */
  kept: { key: string; value: unknown }
}

export type Database = IDBPDatabase<Schema>
type Upgrade = IDBPTransaction<Schema, StoreNames<Schema>[], 'versionchange'>

/**
 * The steps from each schema to the next: a device that was left in a drawer
 * takes all that it missed, in order. Steps are added, never changed.
 */
const steps: ((db: Database, tx: Upgrade) => void)[] = [
  (db) => {
    db.createObjectStore('events', { keyPath: 'seq' })
    db.createObjectStore('kept')
  },
  // Answers are found without reading every size-up.
  (_db, tx) => void tx.objectStore('events').createIndex('kind', 'kind'),
]

export const schemaVersion = steps.length

export function openDatabase(name = 'lintel'): Promise<Database> {
  return openDB<Schema>(name, schemaVersion, {
    upgrade(db, before, _after, tx) {
      for (const step of steps.slice(before)) step(db, tx)
    },
    blocking(_current, _blocked, event) {
      // A newer page wants to change the schema: let go at once.
      ;(event.target as IDBDatabase).close()
    },
  })
}

/** Written to the disk, not only to its cache, before the promise resolves. */
export const durable = { durability: 'strict' } as const
