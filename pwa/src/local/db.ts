import { openDB, type DBSchema, type IDBPDatabase } from 'idb'
import type { QuizEvent } from '../wire.gen'

/** Who this device is to the server, and how far its history has got. */
export interface Self {
  device: string
  secret: string
  callSign: string
  /** The server knows the device under this call sign. */
  registered: boolean
  /** The sequence number that the next event takes. */
  next: number
  /** The server holds every event up to this one. */
  acked: number
}

interface Schema extends DBSchema {
  /** One's own events, by sequence number; kept after they were synced, for the Log. */
  events: { key: number; value: QuizEvent }
  /** Single values: who we are, the open drill, the open size-up. */
  kept: { key: string; value: unknown }
}

export type Database = IDBPDatabase<Schema>

const schemaVersion = 1

export function openDatabase(name = 'lintel'): Promise<Database> {
  return openDB<Schema>(name, schemaVersion, {
    upgrade(db) {
      db.createObjectStore('events', { keyPath: 'seq' })
      db.createObjectStore('kept')
    },
    blocking(_current, _blocked, event) {
      // A newer page wants to change the schema: let go at once.
      ;(event.target as IDBDatabase).close()
    },
  })
}

/** Written to the disk, not only to its cache, before the promise resolves. */
export const durable = { durability: 'strict' } as const
