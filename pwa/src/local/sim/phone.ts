import type { QuizEvent } from '../../wire.gen'
import { Journal, type Outside } from '../journal'
import { numbered, newSelf } from '../self'
import type { Shelf } from '../shelf'
import { Sync, type Result, type Timing } from '../sync'
import type { Chance } from './chance'
import { Disk, type Page } from './disk'
import type { Network } from './network'

/** Planted: takes its number in one transaction and writes the event in another. */
class HastyJournal extends Journal {
  readonly #at: Shelf
  readonly #from: Outside
  constructor(shelf: Shelf, from: Outside) {
    super(shelf, from)
    this.#at = shelf
    this.#from = from
  }

  override async append(kind: QuizEvent['kind'], engine: string, body: unknown): Promise<QuizEvent> {
    const old = (await this.#at.self()) ?? newSelf(this.#from.hex)
    const { self, event } = numbered(old, { id: this.#from.hex(16), kind, engine, body, t_client: this.#from.now() })
    await this.#at.change((now) => ({ self: { ...self, acked: now?.acked ?? 0 }, gives: undefined }))
    await this.#at.change(() => ({ add: event, gives: undefined })).catch(() => {})
    return event
  }
}

interface Tab {
  journal: Journal
  sync: Sync
}

/** A phone with two tabs over one disk. What it told a person was kept is in `ticked`. */
export class Phone {
  readonly disk: Disk
  readonly ticked: string[] = []
  /** Milliseconds; jumps about as the clocks of phones do. */
  clock = 1_700_000_000_000
  refused = 0
  crashes = 0
  #page: Page = { dead: false }
  #tabs: Tab[] = []
  #died: Promise<void> = Promise.resolve()
  #die: () => void = () => {}
  readonly #chance: Chance
  readonly #network: Network
  readonly #hasty: boolean

  constructor(chance: Chance, network: Network, hasty: boolean) {
    this.#chance = chance
    this.#network = network
    this.#hasty = hasty
    this.disk = new Disk(chance)
    this.#boot()
  }

  #boot(): void {
    const page = (this.#page = { dead: false })
    this.#died = new Promise((resolve) => (this.#die = resolve))
    this.#tabs = [0, 1].map(() => {
      const shelf = this.disk.shelf(page)
      const outside: Outside = { now: () => this.clock, hex: this.#chance.hex }
      const journal = this.#hasty ? new HastyJournal(shelf, outside) : new Journal(shelf, outside)
      return { journal, sync: new Sync(journal, this.#network.from(page), () => {}, this.#timing()) }
    })
  }

  #timing(): Timing {
    return { random: () => this.#chance.next(), setTimer: () => 0, clearTimer: () => {} }
  }

  /** Does something unless the phone dies meanwhile. */
  during(doing: Promise<unknown>): Promise<unknown> {
    return Promise.race([doing, this.#died])
  }

  /** Commits an answer; only when that resolves does a person see the tick. */
  async commit(): Promise<void> {
    const { journal } = this.#tabs[this.#chance.below(2)]!
    try {
      const event = await journal.append('note', '0.1.0', {})
      this.ticked.push(event.id)
    } catch {
      this.refused++ // no room: the person was told, and nothing was ticked
    }
  }

  sync(): Promise<Result> {
    return this.#tabs[this.#chance.below(2)]!.sync.wake()
  }

  /** An acknowledgement by the live socket, perhaps an old one. */
  hearAcked(seq: number): Promise<void> {
    return this.#tabs[0]!.journal.acknowledge(seq)
  }

  crash(): void {
    this.crashes++
    this.#page.dead = true
    this.disk.crash()
    this.#die()
    this.#boot()
  }
}
