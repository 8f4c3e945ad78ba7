import { Chance } from './chance'
import { ModelServer } from './server'
import { Network } from './network'
import { Phone } from './phone'

// One random month of a phone and its server, with everything going wrong.

/** Bugs that are put in on purpose, to see that they are found. */
export const plants = ['tick_before_disk', 'trusts_sending', 'number_outside', 'server_doubles'] as const
export type Plant = (typeof plants)[number]

export interface Lived {
  events: number
  crashes: number
  refused: number
  /** What went wrong; empty where nothing did. */
  wrong: string[]
  /** Of all that was held and heard: the same seed gives the same. */
  print: number
}

const mostSteps = 24 // chosen by us: some thirty events and a dozen syncs a history

export async function live(seed: number, plant?: Plant): Promise<Lived> {
  const chance = new Chance(seed)
  const server = new ModelServer()
  const network = new Network(server, chance)
  const phone = new Phone(chance, network, plant === 'number_outside')
  phone.disk.relaxed = plant === 'tick_before_disk'
  server.doubles = plant === 'server_doubles'
  network.trusting = plant === 'trusts_sending'

  const wrong: string[] = []
  let restored = false
  for (let step = 4 + chance.below(mostSteps); step > 0; step--) {
    restored ||= await happen(chance, phone, network, server)
    if (!restored) wrong.push(...ahead(phone, server))
  }
  await end(phone, network)
  wrong.push(...judge(phone, server))
  return { events: phone.ticked.length, crashes: phone.crashes, refused: phone.refused, wrong, print: print(phone, server, network) }
}

/** One step; true where the server lost what it had acknowledged and was put back from a backup. */
async function happen(chance: Chance, phone: Phone, network: Network, server: ModelServer): Promise<boolean> {
  network.down = chance.percent(15)
  phone.disk.full = chance.percent(8)
  if (chance.percent(10)) phone.clock += (chance.next() - 0.5) * 4e9 // weeks forward or back
  const doing: Promise<unknown>[] = []
  for (let n = chance.below(4); n > 0; n--) doing.push(phone.commit())
  for (let n = chance.below(3); n > 0; n--) doing.push(phone.sync())
  const heard = chance.percent(15) && [...server.devices.values()].at(-1)?.events.length
  if (heard) doing.push(phone.hearAcked(chance.below(heard + 1)))
  if (chance.percent(20)) {
    for (let n = chance.below(60); n > 0; n--) await Promise.resolve()
    phone.crash()
    void Promise.allSettled(doing)
  } else {
    await phone.during(Promise.allSettled(doing))
    if (chance.percent(50)) phone.disk.flush() // the cache reaches the disk in the end
  }
  if (chance.percent(40)) await network.deliverLate()
  const restore = chance.percent(2)
  if (restore) server.restore((length) => chance.below(length + 1))
  return restore
}

/** The phone must never think that the server holds more than it does. */
function ahead(phone: Phone, server: ModelServer): string[] {
  const self = phone.disk.held.self
  const held = self && (server.devices.get(self.device)?.events.length ?? 0)
  return self && self.acked > held! ? [`acknowledged up to ${self.acked} while ${held} are held`] : []
}

/** The month is over: room on the disk, the server is there, and everything is sent. */
async function end(phone: Phone, network: Network): Promise<void> {
  phone.disk.full = false
  network.heal()
  await network.deliverLate()
  await phone.commit()
  for (let tries = 0; tries < 20; tries++) if ((await phone.sync()) === 'done') return
}

function judge(phone: Phone, server: ModelServer): string[] {
  const { self, events } = phone.disk.held
  const wrong: string[] = []
  const say = (bad: boolean, what: string) => void (bad && wrong.push(what))
  const kept = new Set(events.map(({ id }) => id))
  const lost = phone.ticked.filter((id) => !kept.has(id)).length
  say(lost > 0, `${lost} ticked and lost on the phone`)
  say(events.some(({ seq }, n) => seq !== n + 1), 'a hole in the numbers on the phone')
  const held = (self && server.devices.get(self.device)?.events) ?? []
  const there = held.map(({ id }) => id)
  say(new Set(there).size !== there.length, 'doubled on the server')
  say(there.join() !== events.map(({ id }) => id).join(), `${there.length} on the server, ${events.length} on the phone`)
  say(self?.acked !== events.length, `${self?.acked} acknowledged of ${events.length}`)
  say(server.devices.size > 1, `${server.devices.size} identities of one phone`)
  return wrong
}

/** FNV-1a, 32 bits (public domain). */
function print(phone: Phone, server: ModelServer, network: Network): number {
  const held = [...server.devices.values()].flatMap(({ events }) => events.map(({ id, t_client }) => `${id}${t_client}`))
  let hash = 0x811c9dc5
  for (const letter of [...phone.ticked, ...held, ...network.heard].join()) hash = Math.imul(hash ^ letter.charCodeAt(0), 0x01000193)
  return hash >>> 0
}
