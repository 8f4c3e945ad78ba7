import type { EventKind, QuizEvent } from '../wire.gen'
import { durable, type Database, type Self } from './db'
import { randomHex } from './random'

/**
 * The device's own history: append-only, numbered from 1 without a gap. Number
 * and event are written in one transaction, so that two tabs or a crash can
 * neither skip a number nor use one twice.
 */
export class Journal {
  readonly #db: Database
  readonly #now: () => number

  constructor(db: Database, now: () => number = Date.now) {
    this.#db = db
    this.#now = now
  }

  /** Adds an event and returns once it is on the disk. */
  async append(kind: EventKind, engine: string, body: unknown): Promise<QuizEvent> {
    const tx = this.#db.transaction(['events', 'kept'], 'readwrite', durable)
    const kept = tx.objectStore('kept')
    const self = ((await kept.get('self')) as Self | undefined) ?? newSelf()
    const event: QuizEvent = {
      v: 1,
      id: randomHex(16),
      device: self.device,
      seq: self.next,
      engine,
      t_client: this.#now(),
      kind,
      body,
    }
    await Promise.all([
      tx.objectStore('events').add(event),
      kept.put({ ...self, next: self.next + 1 }, 'self'),
      tx.done,
    ])
    return event
  }

  /** Who we are; made on first asking. */
  async self(): Promise<Self> {
    return ((await this.#db.get('kept', 'self')) as Self | undefined) ?? this.#change((self) => self)
  }

  async unsynced(): Promise<number> {
    const { next, acked } = await this.self()
    return next - 1 - acked
  }

  /** The next events to send, within what one request may hold. */
  async batch(most: number, mostBytes: number): Promise<QuizEvent[]> {
    const { acked } = await this.self()
    const events = await this.#db.getAll('events', IDBKeyRange.lowerBound(acked, true), most)
    let bytes = 0
    const fits = events.findIndex((event) => (bytes += JSON.stringify(event).length) > mostBytes)
    return fits === -1 ? events : events.slice(0, Math.max(1, fits))
  }

  /** The server holds everything up to seq. Never moves backward: replies may overtake each other. */
  async acknowledge(seq: number): Promise<void> {
    await this.#change((self) => ({ ...self, acked: Math.max(self.acked, Math.min(seq, self.next - 1)) }))
  }

  /** The server holds less than we thought (it was restored from a backup): send again from there. */
  async rewind(seq: number): Promise<void> {
    await this.#change((self) => ({ ...self, acked: Math.min(self.acked, seq) }))
  }

  async registered(yes: boolean): Promise<void> {
    await this.#change((self) => ({ ...self, registered: yes }))
  }

  async rename(callSign: string): Promise<void> {
    await this.#change((self) => ({ ...self, callSign, registered: false }))
  }

  /** A new identity over the same events, for when the server holds another history under the old one. */
  async renew(): Promise<void> {
    const tx = this.#db.transaction(['events', 'kept'], 'readwrite', durable)
    const kept = tx.objectStore('kept')
    const old = (await kept.get('self')) as Self | undefined
    const self = { ...newSelf(), callSign: old?.callSign ?? newCallSign(), next: old?.next ?? 1 }
    await kept.put(self, 'self')
    const store = tx.objectStore('events')
    for (const event of await store.getAll()) await store.put({ ...event, device: self.device })
    await tx.done
  }

  /** Everything that happened on this device, oldest first. */
  events(): Promise<QuizEvent[]> {
    return this.#db.getAll('events')
  }

  /** Forgets everything, this device's identity with it. What the server holds stays there. */
  async erase(): Promise<void> {
    const tx = this.#db.transaction(['events', 'kept'], 'readwrite', durable)
    await Promise.all([tx.objectStore('events').clear(), tx.objectStore('kept').clear(), tx.done])
  }

  async #change(next: (self: Self) => Self): Promise<Self> {
    const tx = this.#db.transaction('kept', 'readwrite', durable)
    const self = next(((await tx.store.get('self')) as Self | undefined) ?? newSelf())
    await Promise.all([tx.store.put(self, 'self'), tx.done])
    return self
  }
}

function newSelf(): Self {
  return { device: randomHex(16), secret: randomHex(32), callSign: newCallSign(), registered: false, next: 1, acked: 0 }
}

/** A call sign until its owner chooses one. */
function newCallSign(): string {
  return `Trainee ${randomHex(2).toUpperCase()}`
}
