import type { QuizEvent } from '../wire.gen'
import type { Self } from './self'

/** What came of one request: what the sync does next hangs on nothing else. */
export type Outcome =
  | { kind: 'acked'; acked: number }
  | { kind: 'gap'; acked: number } // an event before the first one sent is missing there
  | { kind: 'forked' } // another history stands under our id
  | { kind: 'unknown' } // the server does not know this device, or not by this secret
  | { kind: 'refused'; why: string } // sending the same again will not help
  | { kind: 'unreachable' } // no network, no server, or it asks to wait

/** The server's API as the sync uses it. */
export interface Server {
  register(self: Self): Promise<Outcome>
  send(self: Self, events: QuizEvent[]): Promise<Outcome>
}

type Fetch = (path: string, init: RequestInit) => Promise<Response>

const patience = 20_000 // ms for one request; chosen by us for slow mobile networks

export class HTTPServer implements Server {
  readonly #fetch: Fetch
  constructor(send: Fetch = (path, init) => fetch(path, init)) {
    this.#fetch = send
  }

  register({ device, secret, callSign }: Self): Promise<Outcome> {
    return this.#post('/api/v1/devices', { v: 1, device, secret, call_sign: callSign })
  }

  send(self: Self, events: QuizEvent[]): Promise<Outcome> {
    return this.#post('/api/v1/events', { v: 1, events }, `Device ${self.device}:${self.secret}`)
  }

  async #post(path: string, body: unknown, authorization?: string): Promise<Outcome> {
    const headers: Record<string, string> = { 'content-type': 'application/json' }
    if (authorization) headers['authorization'] = authorization
    try {
      const signal = AbortSignal.timeout(patience)
      const response = await this.#fetch(path, { method: 'POST', headers, body: JSON.stringify(body), signal })
      return outcome(response.status, await response.json().catch(() => null))
    } catch {
      return { kind: 'unreachable' }
    }
  }
}

interface Body {
  v?: number
  acked?: number
  error?: { where: string; what: string; do: string }
}

/** Reads an answer's status and body. */
export function outcome(status: number, body: Body | null): Outcome {
  const acked = typeof body?.acked === 'number' ? body.acked : undefined
  if (status === 200 || status === 201) return { kind: 'acked', acked: acked ?? 0 }
  if (status === 409) return acked === undefined ? { kind: 'forked' } : { kind: 'gap', acked }
  if (status === 401 || status === 403) return { kind: 'unknown' }
  if (status === 408 || status === 429 || status >= 500) return { kind: 'unreachable' }
  const { where = '', what = `answered ${status}` } = body?.error ?? {}
  return { kind: 'refused', why: `${where} ${what}`.trim() }
}
