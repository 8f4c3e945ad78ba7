import type { EventKind, QuizEvent } from '../wire.gen'
import { randomHex } from './random'
import { acknowledged, newSelf, numbered, renewed, rewound, taking, type Hex, type Self, type Taking } from './self'
import type { Shelf } from './shelf'

/** Where chance and the clock come from; tests bring their own. */
export interface Outside {
  now(): number
  hex: Hex
}

const outside: Outside = { now: Date.now, hex: randomHex }

/**
 * The device's own history: append-only, numbered from 1 without a gap. Number
 * and event are written in one transaction, so that two tabs or a crash can
 * neither skip a number nor use one twice.
 */
export class Journal {
  readonly #shelf: Shelf
  readonly #outside: Outside

  constructor(shelf: Shelf, from: Outside = outside) {
    this.#shelf = shelf
    this.#outside = from
  }

  /** Adds an event and returns once it is on the disk. */
  append(kind: EventKind, engine: string, body: unknown): Promise<QuizEvent> {
    const { now, hex } = this.#outside
    const what = { id: hex(16), kind, engine, body, t_client: now() }
    return this.#shelf.change((old) => {
      const { self, event } = numbered(old ?? newSelf(hex), what)
      return { self, add: event, gives: event }
    })
  }

  /** Who we are; made on first asking. */
  async self(): Promise<Self> {
    return (await this.#shelf.self()) ?? this.#change((self) => self)
  }

  async unsynced(): Promise<number> {
    const { next, acked } = await this.self()
    return next - 1 - acked
  }

  /** The next events to send, within what one request may hold. */
  async batch(most: number, mostBytes: number): Promise<QuizEvent[]> {
    const { acked } = await this.self()
    const events = await this.#shelf.after(acked, most)
    let bytes = 0
    const fits = events.findIndex((event) => (bytes += JSON.stringify(event).length) > mostBytes)
    return fits === -1 ? events : events.slice(0, Math.max(1, fits))
  }

  async acknowledge(seq: number): Promise<void> {
    await this.#change((self) => acknowledged(self, seq))
  }

  async rewind(seq: number): Promise<void> {
    await this.#change((self) => rewound(self, seq))
  }

  async registered(yes: boolean): Promise<void> {
    await this.#change((self) => ({ ...self, registered: yes }))
  }

  async rename(callSign: string): Promise<void> {
    await this.#change((self) => ({ ...self, callSign, registered: false }))
  }

  /** A new identity over the same events, for when the server holds another history under the old one. */
  async renew(): Promise<void> {
    const { hex } = this.#outside
    await this.#shelf.change((old) => {
      const self = renewed(old ?? newSelf(hex), hex)
      return { self, readdress: self.device, gives: undefined }
    })
  }

  /** A code that moves this history is shown: should our secret not do any more, it has moved. */
  async offered(): Promise<void> {
    await this.#change((self) => ({ ...self, offered: true }))
  }

  async moved(): Promise<void> {
    await this.#change((self) => ({ ...self, moved: true }))
  }

  /** A history is about to be asked for, or will not come after all. */
  async taking(what: Taking | undefined): Promise<void> {
    await this.#change((self) => taking(self, what))
  }

  /** Takes over a history that another phone has written and the server held. */
  adopt({ device, secret, callSign }: Pick<Self, 'device' | 'secret' | 'callSign'>, events: readonly QuizEvent[]): Promise<void> {
    return this.#shelf.replace({ device, secret, callSign, registered: true, next: events.length + 1, acked: events.length }, events)
  }

  /** Everything that happened on this device, oldest first. */
  events(): Promise<QuizEvent[]> {
    return this.#shelf.after(0)
  }

  /** Forgets everything, this device's identity with it. What the server holds stays there. */
  erase(): Promise<void> {
    return this.#shelf.clear()
  }

  #change(next: (self: Self) => Self): Promise<Self> {
    return this.#shelf.change((old) => {
      const self = next(old ?? newSelf(this.#outside.hex))
      return { self, gives: self }
    })
  }
}
