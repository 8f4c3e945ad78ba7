import type { QuizEvent } from '../../wire.gen'
import type { Self } from '../self'
import type { Outcome, Server } from '../server'
import type { Chance } from './chance'
import { never, type Page } from './disk'
import type { ModelServer } from './server'

/**
 * A network that loses requests, loses replies, delivers twice and delivers late,
 * after newer requests; and a server that dies before or after it has written.
 * To the phone all of it looks the same: no answer.
 */
export class Network {
  readonly #server: ModelServer
  readonly #chance: Chance
  #late: (() => Promise<unknown>)[] = []
  down = false
  #healed = false
  /** Planted: what was sent counts as arrived. */
  trusting = false
  readonly heard: string[] = []

  constructor(server: ModelServer, chance: Chance) {
    this.#server = server
    this.#chance = chance
  }

  /** The server as one page sees it. */
  from(page: Page): Server {
    return {
      register: (self) => this.#carry(page, () => this.#server.register(self)),
      send: (self, events) => this.#send(page, self, events),
    }
  }

  async #send(page: Page, self: Self, events: QuizEvent[]): Promise<Outcome> {
    const outcome = await this.#carry(page, () => this.#server.send(self, events))
    if (this.trusting && outcome.kind === 'unreachable') return { kind: 'acked', acked: events.at(-1)!.seq }
    return outcome
  }

  async #carry(page: Page, call: () => Promise<Outcome>): Promise<Outcome> {
    await this.#chance.pause()
    const outcome = await this.#meet(call)
    await this.#chance.pause()
    if (page.dead) return never
    this.heard.push(outcome.kind)
    return outcome
  }

  async #meet(call: () => Promise<Outcome>): Promise<Outcome> {
    if (this.#healed) return call()
    if (this.down) return { kind: 'unreachable' }
    const fate = this.#chance.below(100)
    if (fate < 15) return { kind: 'unreachable' } // the request was lost, or the server died before it wrote
    if (fate < 25) {
      this.#late.push(call)
      return { kind: 'unreachable' } // it comes later, out of turn
    }
    const outcome = await call()
    if (fate < 40) return { kind: 'unreachable' } // the reply was lost, or the server died after it wrote
    return fate < 50 ? call() : outcome // it came twice
  }

  /** What was held up arrives, the newest first. */
  async deliverLate(): Promise<void> {
    for (const call of this.#late.splice(0).toReversed()) await call()
  }

  /** From now on nothing goes wrong. */
  heal(): void {
    this.#healed = true
  }
}
