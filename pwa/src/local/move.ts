import type { QuizEvent } from '../wire.gen'
import type { Journal } from './journal'
import { randomHex } from './random'
import type { Self, Taking } from './self'

// A history moves to another phone by a code that works once, for a minute. The
// secret of the device never travels: the new phone makes one of its own, and the
// server puts it in the place of the old (server/httpapi, POST /devices/move and
// /devices/claim). What the server does not hold cannot move: the old phone syncs first.
// The new phone writes its secret down before it asks, with whose history it is: if
// it stops between the asking and the last record, it goes on from there when it is
// opened again, and needs nothing more of the old phone.

export interface Offer {
  token: string
  device: string
  callSign: string
}

/** How a taking-over came out: taken, refused, or not known yet because no answer came. */
export type Taken = { kind: 'taken'; callSign: string } | { kind: 'refused' } | { kind: 'waiting' }

type Fetch = (path: string, init: RequestInit) => Promise<Response>

const patience = 20_000 // ms for one request; chosen by us for slow mobile networks

// A request under way may still be answered this long after a code has run out.
// Chosen by us: the code lasts a minute, a request a third of one.
const surelyOver = 180_000

/** Where the address of a code holds its offer: behind the #, which is never sent to a server. */
const mark = '#move='

export function moveAddress({ token, device, callSign }: Offer, origin: string): string {
  return `${origin}/log${mark}${[token, device, encodeURIComponent(callSign)].join('/')}`
}

/** The offer of a code that was scanned, taken out of the address so that it is in no history. */
export function offerScanned(): Offer | 'unreadable' | undefined {
  if (!location.hash.startsWith(mark)) return undefined
  const parts = location.hash.slice(mark.length).split('/')
  history.replaceState(null, '', location.pathname)
  try {
    const [token, device, callSign] = parts.map(decodeURIComponent)
    return token && device && callSign ? { token, device, callSign } : 'unreadable'
  } catch {
    return 'unreadable'
  }
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
    const { answer } = await this.#call<{ token: string }>('POST', '/api/v1/devices/move', { v: 1 }, self)
    return answer && { token: answer.token, device: self.device, callSign: self.callSign }
  }

  /** Takes over the history behind a code. */
  async take({ token, device, callSign }: Offer): Promise<Taken> {
    const taking = { device, callSign, secret: randomHex(32), since: Date.now() }
    await this.#journal.taking(taking)
    const { status, answer } = await this.#call('POST', '/api/v1/devices/claim', { v: 1, token, secret: taking.secret })
    if (answer) return this.#adopt(taking)
    return status >= 400 && status < 500 ? this.#refused() : this.resume()
  }

  /** Goes on with what was asked for and not answered, or not fetched whole. */
  async resume(): Promise<Taken> {
    const { taking } = await this.#journal.self()
    if (!taking) return { kind: 'refused' }
    const { status, answer } = await this.#call('GET', '/api/v1/records?after=0', undefined, taking)
    if (answer) return this.#adopt(taking)
    return status === 401 && Date.now() - taking.since > surelyOver ? this.#refused() : { kind: 'waiting' }
  }

  async #adopt(taking: Taking): Promise<Taken> {
    const events = await this.#all(taking)
    if (!events) return { kind: 'waiting' }
    await this.#journal.adopt(taking, events)
    return { kind: 'taken', callSign: taking.callSign }
  }

  async #refused(): Promise<Taken> {
    await this.#journal.taking(undefined)
    return { kind: 'refused' }
  }

  /** Takes away everything the server holds of this device. False where it could not be reached. */
  async forget(): Promise<boolean> {
    const self = await this.#journal.self()
    if (!self.registered) return true
    return (await this.#call('DELETE', '/api/v1/devices', undefined, self)).answer !== undefined
  }

  /** Every event that the server holds of a device, in order; undefined where a page does not come. */
  async #all(self: Credentials): Promise<QuizEvent[] | undefined> {
    const events: QuizEvent[] = []
    for (let after = 0; ; ) {
      const page = await this.#page(self, after)
      if (!page) return undefined
      events.push(...page.records.map(bare))
      if (!page.next) return events
      after = page.next
    }
  }

  /** A page is asked for a few times; what does not come then comes when the taking-over goes on. */
  async #page(self: Credentials, after: number): Promise<Page | undefined> {
    for (const wait of [1000, 2000, 4000]) {
      const { answer } = await this.#call<Page>('GET', `/api/v1/records?after=${after}`, undefined, self)
      if (answer) return answer
      await new Promise((resolve) => setTimeout(resolve, wait))
    }
    return undefined
  }

  /** What the server said; status 0 where it said nothing. */
  async #call<T>(method: string, path: string, body: unknown, self?: Credentials): Promise<{ status: number; answer?: T }> {
    const headers: Record<string, string> = { 'content-type': 'application/json' }
    if (self) headers['authorization'] = `Device ${self.device}:${self.secret}`
    try {
      const init = { method, headers, signal: AbortSignal.timeout(patience), ...(body !== undefined && { body: JSON.stringify(body) }) }
      const response = await this.#fetch(path, init)
      const { status } = response
      if (!response.ok) return { status }
      return { status, answer: status === 204 ? ({} as T) : ((await response.json()) as T) }
    } catch {
      return { status: 0 }
    }
  }
}

type Credentials = Pick<Self, 'device' | 'secret'>

interface Page {
  records: QuizEvent[]
  next?: number
}

/** A record without what the server added to the event. */
function bare({ v, id, device, seq, engine, t_client, kind, body }: QuizEvent): QuizEvent {
  return { v, id, device, seq, engine, t_client, kind, body }
}
