import { signal } from '@preact/signals'
import type { EventKind, QuizEvent } from '../wire.gen'
import { durable, openDatabase, type Database } from './db'
import { Journal } from './journal'
import { Live } from './live'
import { HTTPServer } from './server'
import { DiskShelf } from './shelf'
import { keepsNothing, openDrill, sync as status, type Reach } from './status'
import { realTiming, Sync, type Result } from './sync'

// The one store of this page: opened on first use, synced whenever there is a reason.

let opening: Promise<Store> | undefined

/** Counts the changes of the history, for screens that show it. */
export const changes = signal(0)

/** Opens the store, or says to the page that this browser keeps nothing; the next caller tries again. */
export function store(): Promise<Store> {
  return (opening ??= open().then(
    (opened) => {
      keepsNothing.value = false
      return opened
    },
    (error: unknown) => {
      opening = undefined
      keepsNothing.value = true
      throw error
    },
  ))
}

export class Store {
  readonly journal: Journal
  readonly #db: Database
  readonly #sync: Sync
  readonly #live: Live
  #asked: Promise<boolean> | undefined

  constructor(db: Database) {
    this.#db = db
    this.journal = new Journal(new DiskShelf(db))
    this.#sync = new Sync(this.journal, new HTTPServer(), (result) => void this.#tell(result))
    this.#live = new Live(
      {
        opened: () => void this.#sync.wake(),
        acked: (seq) => void this.journal.acknowledge(seq).then(() => this.#tell(undefined)),
        version: () => void navigator.serviceWorker?.getRegistration().then((found) => found?.update()),
      },
      realTiming,
    )
  }

  /** Writes an event to the disk, then begins to sync it. Resolves when it is on the disk. */
  async record(kind: EventKind, engine: string, body: unknown): Promise<QuizEvent> {
    const event = await this.journal.append(kind, engine, body)
    changes.value++
    await this.#tell(undefined)
    void this.#sync.wake()
    void (this.#asked ??= askToPersist())
    return event
  }

  /** Takes another call sign and tells the server. */
  async rename(callSign: string): Promise<void> {
    await this.journal.rename(callSign)
    changes.value++
    void this.#sync.wake()
  }

  syncNow(): Promise<Result> {
    return this.#sync.wake()
  }

  /** A value that outlives the page: the open drill, the open size-up. */
  async keep(key: 'drill' | 'size_up', value: unknown): Promise<void> {
    const tx = this.#db.transaction('kept', 'readwrite', durable)
    await Promise.all([value === undefined ? tx.store.delete(key) : tx.store.put(value, key), tx.done])
    if (key === 'drill') openDrill.value = progressOf(value as Progress | undefined)
  }

  async kept<T>(key: 'drill' | 'size_up'): Promise<T | undefined> {
    return (await this.#db.get('kept', key)) as T | undefined
  }

  async erase(): Promise<void> {
    this.#live.close()
    await this.journal.erase()
    changes.value++
    await this.#tell(undefined)
  }

  /** Reads whether a drill was left open, for Home. */
  async readOpenDrill(): Promise<void> {
    openDrill.value = progressOf(await this.kept<Progress>('drill'))
  }

  /** Follows the network and the page's visibility. */
  watch(): void {
    addEventListener('online', () => void this.#sync.wake())
    addEventListener('offline', () => void this.#tell('unreachable'))
    document.addEventListener('visibilitychange', () => {
      if (document.visibilityState === 'visible') void this.#sync.wake()
      else this.#live.close()
    })
    void this.#sync.wake()
  }

  async #tell(result: Result | undefined): Promise<void> {
    const self = await this.journal.self()
    status.value = { unsynced: self.next - 1 - self.acked, reach: reachAfter(result) }
    if (result === 'moved') changes.value++ // who we are has changed, and the Log says so
    if (result === 'done' && document.visibilityState === 'visible') this.#live.open(self)
  }
}

interface Progress {
  scenes: unknown[]
  done: unknown[]
}

function progressOf(set: Progress | undefined): { at: number; of: number } | undefined {
  return set && { at: set.done.length + 1, of: set.scenes.length }
}

/** With nothing to send, no one was asked: then only the device's own word counts. */
function reachAfter(result: Result | undefined): Reach {
  if (!navigator.onLine || result === 'unreachable') return 'offline'
  return result === undefined ? status.value.reach : 'online'
}

async function open(): Promise<Store> {
  const opened = new Store(await openDatabase())
  opened.watch()
  return opened
}

/**
 * Asks the browser not to throw the store away when room runs short; true when
 * it agreed. Asked once there is something to lose: some browsers ask the person.
 */
async function askToPersist(): Promise<boolean> {
  if (!navigator.storage?.persist) return false // plain http, or an old browser
  return (await navigator.storage.persisted()) || navigator.storage.persist()
}

/** Whether a write failed because the device has no room left. */
export function isFull(error: unknown): boolean {
  return error instanceof DOMException && error.name === 'QuotaExceededError'
}
