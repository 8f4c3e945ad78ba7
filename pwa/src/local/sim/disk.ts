import type { QuizEvent } from '../../wire.gen'
import type { Self } from '../self'
import type { Change, Shelf } from '../shelf'
import type { Chance } from './chance'

interface Held {
  self: Self | undefined
  events: QuizEvent[]
}

/** A page as far as a crash goes. */
export interface Page {
  dead: boolean
}

/** What a dead page waits for never comes. */
export const never = new Promise<never>(() => {})

/**
 * A phone's storage: transactions one after another, each whole or not at all,
 * and a cache in front of the disk that a crash loses. IndexedDB promises the
 * same: https://www.w3.org/TR/IndexedDB/, "transaction lifecycle" and
 * "durability" (strict: flushed before `complete` fires).
 */
export class Disk {
  #held: Held = { self: undefined, events: [] }
  #cached: Held | undefined
  #turn: Promise<void> = Promise.resolve()
  readonly #chance: Chance
  full = false
  /** Planted: says done before the disk has it. */
  relaxed = false

  constructor(chance: Chance) {
    this.#chance = chance
  }

  get held(): Held {
    return this.#cached ?? this.#held
  }

  crash(): void {
    this.#cached = undefined
    this.#turn = Promise.resolve()
  }

  flush(): void {
    if (this.#cached) this.#held = this.#cached
    this.#cached = undefined
  }

  shelf(page: Page): Shelf {
    const read = async <T>(get: (held: Held) => T): Promise<T> => {
      await this.#chance.pause()
      return page.dead ? never : get(this.held)
    }
    return {
      self: () => read(({ self }) => self),
      after: (seq, most = Infinity) => read(({ events }) => events.filter((event) => event.seq > seq).slice(0, most)),
      change: (next) => this.#change(page, next),
      clear: async () => {
        this.#held = { self: undefined, events: [] }
        this.#cached = undefined
      },
      replace: async (self, events) => {
        this.#held = { self, events: [...events] }
        this.#cached = undefined
      },
    }
  }

  #change<T>(page: Page, next: (self: Self | undefined) => Change<T>): Promise<T> {
    if (page.dead) return never
    const done = this.#turn.then(() => this.#transact(page, next))
    this.#turn = done.then(
      () => {},
      () => {},
    )
    return done
  }

  async #transact<T>(page: Page, next: (self: Self | undefined) => Change<T>): Promise<T> {
    await this.#chance.pause()
    if (page.dead) return never
    const change = next(this.held.self)
    if (this.full && change.add) throw new DOMException('no room', 'QuotaExceededError')
    const after = apply(this.held, change)
    await this.#chance.pause()
    if (page.dead) return never
    this.#cached = after
    if (!this.relaxed) {
      this.flush()
      await this.#chance.pause()
      if (page.dead) return never // on the disk, yet nobody was told
    }
    return change.gives
  }
}

function apply(held: Held, { self, add, readdress }: Change<unknown>): Held {
  let { events } = held
  if (add) {
    if (events.some(({ seq }) => seq === add.seq)) throw new DOMException('key exists', 'ConstraintError')
    events = [...events, add]
  }
  if (readdress) events = events.map((event) => ({ ...event, device: readdress }))
  return { self: self ?? held.self, events }
}
