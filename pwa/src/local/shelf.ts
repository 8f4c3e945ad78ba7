import type { QuizEvent } from '../wire.gen'
import { durable, type Database } from './db'
import type { Self } from './self'

/** What one transaction writes. */
export interface Change<T> {
  gives: T
  self?: Self
  add?: QuizEvent
  /** Every event gets this device. */
  readdress?: string
}

/** Where a history lies. Two tabs share one shelf; each change is one transaction, all or nothing. */
export interface Shelf {
  self(): Promise<Self | undefined>
  /** Events after a number, in order, at most so many. */
  after(seq: number, most?: number): Promise<QuizEvent[]>
  /** Reads who we are, writes what follows from it, and resolves once that is on the disk. */
  change<T>(next: (self: Self | undefined) => Change<T>): Promise<T>
  clear(): Promise<void>
  /** Puts another history in the place of this one, whole or not at all. */
  replace(self: Self, events: readonly QuizEvent[]): Promise<void>
}

/** The shelf of a browser: IndexedDB. */
export class DiskShelf implements Shelf {
  readonly #db: Database
  constructor(db: Database) {
    this.#db = db
  }

  async self(): Promise<Self | undefined> {
    return (await this.#db.get('kept', 'self')) as Self | undefined
  }

  after(seq: number, most?: number): Promise<QuizEvent[]> {
    return this.#db.getAll('events', IDBKeyRange.lowerBound(seq, true), most)
  }

  async change<T>(next: (self: Self | undefined) => Change<T>): Promise<T> {
    const tx = this.#db.transaction(['events', 'kept'], 'readwrite', durable)
    const [events, kept] = [tx.objectStore('events'), tx.objectStore('kept')]
    const { gives, self, add, readdress } = next((await kept.get('self')) as Self | undefined)
    if (readdress) for (const event of await events.getAll()) await events.put({ ...event, device: readdress })
    await Promise.all([add && events.add(add), self && kept.put(self, 'self'), tx.done])
    return gives
  }

  async clear(): Promise<void> {
    const tx = this.#db.transaction(['events', 'kept'], 'readwrite', durable)
    await Promise.all([tx.objectStore('events').clear(), tx.objectStore('kept').clear(), tx.done])
  }

  async replace(self: Self, all: readonly QuizEvent[]): Promise<void> {
    const tx = this.#db.transaction(['events', 'kept'], 'readwrite', durable)
    const [events, kept] = [tx.objectStore('events'), tx.objectStore('kept')]
    await Promise.all([events.clear(), kept.clear(), kept.put(self, 'self'), ...all.map((event) => events.add(event)), tx.done])
  }
}
