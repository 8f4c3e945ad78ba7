import type { QuizEvent } from '../wire.gen'
import type { Journal } from './journal'
import { randomHex } from './random'
import type { Self } from './self'

// A history moves to another phone by a code that works once, for a minute. The
// secret of the device never travels: the new phone makes one of its own, and the
// server puts it in the place of the old (server/httpapi, POST /devices/move and
// /devices/claim). What the server does not hold cannot move: the old phone syncs first.

export interface Offer {
  token: string
}

type Fetch = (path: string, init: RequestInit) => Promise<Response>

const patience = 20_000 // ms for one request; chosen by us for slow mobile networks

/** Where the address of a code holds its token: behind the #, which is never sent to a server. */
const mark = '#move='

export function moveAddress(offer: Offer, origin: string): string {
  return `${origin}/log${mark}${offer.token}`
}

/** The token of a code that was scanned, taken out of the address so that it is in no history. */
export function tokenScanned(): string | undefined {
  if (!location.hash.startsWith(mark)) return undefined
  const token = location.hash.slice(mark.length)
  history.replaceState(null, '', location.pathname)
  return token
}

export class Moving {
  readonly #journal: Journal
  readonly #fetch: Fetch

  constructor(journal: Journal, send: Fetch = (path, init) => fetch(path, init)) {
    this.#journal = journal
    this.#fetch = send
  }

  /** A code for the other phone. Undefined where the server cannot be reached. */
  async offer(): Promise<Offer | undefined> {
    const self = await this.#journal.self()
    await this.#journal.offered() // first: the code may be taken before its answer is here
    return this.#call<Offer>('POST', '/api/v1/devices/move', { v: 1 }, self)
  }

  /** Takes over the history behind a code; the call sign it goes by, or undefined where the code has run out. */
  async take(token: string): Promise<string | undefined> {
    const secret = randomHex(32)
    const claimed = await this.#call<{ device: string; call_sign: string }>('POST', '/api/v1/devices/claim', { v: 1, token, secret })
    if (!claimed) return undefined
    const self = { device: claimed.device, secret, callSign: claimed.call_sign }
    await this.#journal.adopt(self, await this.#all(self))
    return self.callSign
  }

  /** Takes away everything the server holds of this device. False where it could not be reached. */
  async forget(): Promise<boolean> {
    const self = await this.#journal.self()
    if (!self.registered) return true
    return (await this.#call('DELETE', '/api/v1/devices', undefined, self)) !== undefined
  }

  /** Every event that the server holds of a device, in order. */
  async #all(self: Pick<Self, 'device' | 'secret'>): Promise<QuizEvent[]> {
    const events: QuizEvent[] = []
    for (let after = 0; ; ) {
      const page = await this.#page(self, after)
      events.push(...page.records.map(bare))
      if (!page.next) return events
      after = page.next
    }
  }

  /** The code is spent by now, so a page is asked for until it comes: nothing may be left behind. */
  async #page(self: Pick<Self, 'device' | 'secret'>, after: number): Promise<{ records: QuizEvent[]; next?: number }> {
    for (let wait = 1000; ; wait = Math.min(30_000, wait * 2)) {
      const page = await this.#call<{ records: QuizEvent[]; next?: number }>('GET', `/api/v1/records?after=${after}`, undefined, self)
      if (page) return page
      await new Promise((resolve) => setTimeout(resolve, wait))
    }
  }

  async #call<T>(method: string, path: string, body: unknown, self?: Pick<Self, 'device' | 'secret'>): Promise<T | undefined> {
    const headers: Record<string, string> = { 'content-type': 'application/json' }
    if (self) headers['authorization'] = `Device ${self.device}:${self.secret}`
    try {
      const init = { method, headers, signal: AbortSignal.timeout(patience), ...(body !== undefined && { body: JSON.stringify(body) }) }
      const response = await this.#fetch(path, init)
      if (!response.ok) return undefined
      return response.status === 204 ? ({} as T) : ((await response.json()) as T)
    } catch {
      return undefined
    }
  }
}

/** A record without what the server added to the event. */
function bare({ v, id, device, seq, engine, t_client, kind, body }: QuizEvent): QuizEvent {
  return { v, id, device, seq, engine, t_client, kind, body }
}
