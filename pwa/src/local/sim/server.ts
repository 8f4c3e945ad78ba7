import type { QuizEvent } from '../../wire.gen'
import type { Self } from '../self'
import type { Outcome, Server } from '../server'

interface Held {
  secret: string
  events: QuizEvent[]
}

/**
 * The server's side of the contract, as quiz.Store states it for Register and
 * Append and server/httpapi for the replies: contiguous, append-only, all or
 * none, the same number and id skipped, a hole refused with the number held,
 * another event under a held number or id called a fork. server/store is held
 * to the same by server/store/storetest.
 */
export class ModelServer implements Server {
  readonly devices = new Map<string, Held>()
  /** Planted: takes what it holds already a second time. */
  doubles = false

  async register(self: Self): Promise<Outcome> {
    const known = this.devices.get(self.device)
    if (known && known.secret !== self.secret) return { kind: 'unknown' }
    if (!known) this.devices.set(self.device, { secret: self.secret, events: [] })
    return { kind: 'acked', acked: 0 }
  }

  async send(self: Self, batch: QuizEvent[]): Promise<Outcome> {
    const held = this.devices.get(self.device)
    if (held?.secret !== self.secret) return { kind: 'unknown' }
    const before = held.events.length
    const first = batch[0]!.seq
    const holed = batch.some((event, n) => event.seq !== first + n)
    if (holed || (!this.doubles && first > before + 1)) return { kind: 'gap', acked: before }
    if (this.doubles) held.events.push(...batch)
    else if (!this.#append(held.events, batch)) return { kind: 'forked' }
    return { kind: 'acked', acked: held.events.at(-1)!.seq }
  }

  /** All or none: false where one of them is another event than the one held. */
  #append(events: QuizEvent[], batch: QuizEvent[]): boolean {
    const known = new Map(events.map(({ id, seq }) => [id, seq]))
    for (const { id, seq } of batch) {
      const old = known.get(id)
      const fresh = old === undefined && seq > events.length
      if (old !== seq && !fresh) return false
    }
    events.push(...batch.filter(({ seq }) => seq > events.length))
    return true
  }

  /** The server is restored from a backup that holds only the first part of each history. */
  restore(keep: (length: number) => number): void {
    for (const { events } of this.devices.values()) events.length = keep(events.length)
  }
}
