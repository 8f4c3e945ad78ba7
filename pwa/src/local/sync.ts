import type { Journal } from './journal'
import type { Self } from './self'
import type { Outcome, Server } from './server'

// Limits of one request: the server's (quiz.MaxBatch), and a size that a slow
// phone gets through before its patience ends (chosen by us).
const mostEvents = 100
const mostBytes = 512 * 1024

// Waiting between tries grows from 2 s to 5 min, each time a random share of it,
// so that thirty phones of one class do not all come back in the same instant.
// Chosen by us.
const firstWait = 2_000
const longestWait = 300_000

/** Chance and time, given from outside so that tests hold them. */
export interface Timing {
  random(): number
  setTimer(run: () => void, ms: number): unknown
  clearTimer(timer: unknown): void
}

export const realTiming: Timing = {
  random: () => Math.random(),
  setTimer: (run, ms) => setTimeout(run, ms),
  clearTimer: (timer) => clearTimeout(timer as number),
}

/** How the last try went. */
export type Result = 'done' | 'unreachable' | 'refused' | 'moved'

/**
 * Sends what the server does not hold yet, in order, until it holds everything.
 * Sending twice is harmless: the server knows events by their number and id.
 */
export class Sync {
  readonly #journal: Journal
  readonly #server: Server
  readonly #timing: Timing
  readonly #changed: (result: Result | undefined) => void
  #running: Promise<Result> | undefined
  #again = false
  #failures = 0
  #timer: unknown

  constructor(journal: Journal, server: Server, changed: (result: Result | undefined) => void, timing = realTiming) {
    this.#journal = journal
    this.#server = server
    this.#changed = changed
    this.#timing = timing
  }

  /** There is a reason to try now: a new event, the network is back, the server spoke. */
  wake(): Promise<Result> {
    this.#timing.clearTimer(this.#timer)
    this.#again = this.#running !== undefined
    return (this.#running ??= this.#run())
  }

  async #run(): Promise<Result> {
    let result: Result
    do {
      this.#again = false
      result = await this.#drain()
    } while (this.#again && result === 'done')
    this.#running = undefined
    this.#plan(result)
    this.#changed(result)
    return result
  }

  #plan(result: Result): void {
    if (result === 'done' || result === 'moved') {
      this.#failures = 0
      return
    }
    const ceiling = Math.min(longestWait, firstWait * 2 ** this.#failures++)
    const wait = ceiling * (0.5 + 0.5 * this.#timing.random())
    this.#timer = this.#timing.setTimer(() => void this.wake(), wait)
  }

  /** Sends batch after batch. Every turn but `patience` of them must move the history on. */
  async #drain(): Promise<Result> {
    let patience = 4
    for (;;) {
      const step = await this.#step()
      if (step.result) return step.result
      if (!step.progress && --patience === 0) return 'refused'
      this.#changed(undefined)
    }
  }

  async #step(): Promise<{ result?: Result; progress?: boolean }> {
    const self = await this.#journal.self()
    if (self.moved) return { result: 'moved' }
    if (!self.registered && self.next > 1) return this.#register(await this.#server.register(self), self)
    const events = await this.#journal.batch(mostEvents, mostBytes)
    if (events.length === 0) return { result: 'done' }
    return this.#settle(await this.#server.send(self, events), self.acked)
  }

  async #register(outcome: Outcome, self: Self): Promise<{ result?: Result; progress?: boolean }> {
    if (outcome.kind === 'unreachable' || outcome.kind === 'refused') return { result: outcome.kind }
    if (outcome.kind === 'acked') await this.#journal.registered(true)
    else if (self.offered) await this.#journal.moved() // another phone took it over
    else await this.#journal.renew() // our id is taken there, by another secret
    return { progress: false }
  }

  async #settle(outcome: Outcome, before: number): Promise<{ result?: Result; progress?: boolean }> {
    switch (outcome.kind) {
      case 'acked':
        await this.#journal.acknowledge(outcome.acked)
        return { progress: outcome.acked > before }
      case 'gap':
        await this.#journal.rewind(outcome.acked)
        return { progress: false }
      case 'forked':
        await this.#journal.renew()
        return { progress: false }
      case 'unknown':
        await this.#journal.registered(false)
        return { progress: false }
      default:
        return { result: outcome.kind }
    }
  }
}
