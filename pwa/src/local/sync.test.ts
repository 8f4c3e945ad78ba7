import 'fake-indexeddb/auto'
import { expect, test } from 'vitest'
import type { QuizEvent } from '../wire.gen'
import { openDatabase } from './db'
import type { Self } from './self'
import { DiskShelf } from './shelf'
import { Journal } from './journal'
import type { Outcome, Server } from './server'
import { Sync, type Timing } from './sync'

/** A server in memory that keeps the contract: contiguous, append-only, idempotent. */
class MemoryServer implements Server {
  secrets = new Map<string, string>()
  histories = new Map<string, QuizEvent[]>()

  async register(self: Self): Promise<Outcome> {
    const known = this.secrets.get(self.device)
    if (known !== undefined && known !== self.secret) return { kind: 'unknown' }
    this.secrets.set(self.device, self.secret)
    return { kind: 'acked', acked: 0 }
  }

  async send(self: Self, events: QuizEvent[]): Promise<Outcome> {
    if (this.secrets.get(self.device) !== self.secret) return { kind: 'unknown' }
    const history = this.histories.get(self.device) ?? []
    this.histories.set(self.device, history)
    if (events[0]!.seq > history.length + 1) return { kind: 'gap', acked: history.length }
    for (const event of events) {
      const held = history[event.seq - 1]
      if (held && held.id !== event.id) return { kind: 'forked' }
      if (!held) history.push(event)
    }
    return { kind: 'acked', acked: history.length }
  }
}

/** Timers that fire only when told to. */
class HandTiming implements Timing {
  waits: number[] = []
  constructor(readonly random: () => number = () => 0.5) {}
  setTimer(_run: () => void, ms: number): unknown {
    return this.waits.push(ms)
  }
  clearTimer(): void {}
}

let count = 0
async function newJournal(): Promise<Journal> {
  return new Journal(new DiskShelf(await openDatabase(`sync-${count++}`)))
}

const quiet = () => {}

test('everything arrives once, in order, over several batches', async () => {
  const journal = await newJournal()
  const server = new MemoryServer()
  for (let n = 0; n < 250; n++) await journal.append('note', '0.1.0', { n })
  expect(await new Sync(journal, server, quiet, new HandTiming()).wake()).toBe('done')
  const { device } = await journal.self()
  expect(server.histories.get(device)?.map((event) => event.seq)).toEqual(Array.from({ length: 250 }, (_, n) => n + 1))
  expect(await journal.unsynced()).toBe(0)
})

test('without a server it waits longer each time, and each time a random share', async () => {
  const journal = await newJournal()
  await journal.append('note', '0.1.0', {})
  const down: Server = {
    register: async () => ({ kind: 'unreachable' }),
    send: async () => ({ kind: 'unreachable' }),
  }
  const timing = new HandTiming(() => 0)
  const sync = new Sync(journal, down, quiet, timing)
  for (let n = 0; n < 10; n++) expect(await sync.wake()).toBe('unreachable')
  expect(timing.waits.slice(0, 4)).toEqual([1000, 2000, 4000, 8000])
  expect(timing.waits.at(-1)).toBe(150_000)
  expect(await journal.unsynced()).toBe(1)
})

test('a device with nothing to say does not introduce itself', async () => {
  const server = new MemoryServer()
  await new Sync(await newJournal(), server, quiet, new HandTiming()).wake()
  expect(server.secrets.size).toBe(0)
})

test('a server restored from an older backup gets the missing part again', async () => {
  const journal = await newJournal()
  const server = new MemoryServer()
  const sync = new Sync(journal, server, quiet, new HandTiming())
  for (let n = 0; n < 5; n++) await journal.append('note', '0.1.0', { n })
  await sync.wake()
  const { device } = await journal.self()
  server.histories.get(device)!.length = 2
  await journal.append('note', '0.1.0', { n: 5 })
  expect(await sync.wake()).toBe('done')
  expect(server.histories.get(device)).toHaveLength(6)
})

test('a copied device becomes two devices and loses nothing', async () => {
  const journal = await newJournal()
  const server = new MemoryServer()
  const { device, secret } = await journal.self()
  server.secrets.set(device, secret)
  server.histories.set(device, [{ seq: 1, id: 'someone-else' } as QuizEvent])
  await journal.append('note', '0.1.0', { mine: true })
  expect(await new Sync(journal, server, quiet, new HandTiming()).wake()).toBe('done')
  const renewed = await journal.self()
  expect(renewed.device).not.toBe(device)
  expect(server.histories.get(renewed.device)?.[0]?.body).toEqual({ mine: true })
})

test('a refused event is not sent in a loop', async () => {
  const journal = await newJournal()
  await journal.append('note', '0.1.0', {})
  let sent = 0
  const server = new MemoryServer()
  server.send = async () => (sent++, { kind: 'refused', why: 'events[0].kind is unknown' })
  expect(await new Sync(journal, server, quiet, new HandTiming()).wake()).toBe('refused')
  expect(sent).toBe(1)
})

test('random histories: lost requests, lost replies, doubles, restores', async () => {
  const seed = Number(process.env['SEED'] ?? Date.now() % 1e9)
  console.log(`sync.test seed ${seed}`)
  const random = mulberry(seed)
  for (let history = 0; history < 30; history++) await oneHistory(random)
}, 60_000)

async function oneHistory(random: () => number): Promise<void> {
  const journal = await newJournal()
  const server = new MemoryServer()
  const faulty = withFaults(server, random)
  for (let turn = 0; turn < 12; turn++) {
    for (let n = Math.floor(random() * 4); n > 0; n--) await journal.append('note', '0.1.0', { turn, n })
    // Two syncs at once are two tabs.
    await Promise.all([0, 1].map(() => new Sync(journal, faulty, quiet, new HandTiming(random)).wake()))
    const history = server.histories.get((await journal.self()).device)
    if (history && random() < 0.1) history.length = Math.floor(random() * history.length)
  }
  await journal.append('note', '0.1.0', { last: true })
  while ((await new Sync(journal, server, quiet, new HandTiming()).wake()) !== 'done');
  const { device } = await journal.self()
  expect(server.histories.get(device)?.map(({ id }) => id)).toEqual((await journal.events()).map(({ id }) => id))
}

function withFaults(server: MemoryServer, random: () => number): Server {
  const faulty = async (call: () => Promise<Outcome>): Promise<Outcome> => {
    const chance = random()
    if (chance < 0.25) return { kind: 'unreachable' } // the request was lost
    const outcome = await call()
    if (chance < 0.5) return { kind: 'unreachable' } // the reply was lost
    return chance < 0.6 ? call() : outcome // the network sent it twice
  }
  return {
    register: (self) => faulty(() => server.register(self)),
    send: (self, events) => faulty(() => server.send(self, events)),
  }
}

/** A small seeded generator, so that a failing history can be run again: SEED=n npm test. */
function mulberry(seed: number): () => number {
  let state = seed
  return () => {
    state = (state + 0x6d2b79f5) | 0
    let t = Math.imul(state ^ (state >>> 15), 1 | state)
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}
