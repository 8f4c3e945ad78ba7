import { HTTPServer } from '../local/server'
import type { Self } from '../local/self'
import { store } from '../local/store'
import type { ClassPlaceView } from '../wire.gen'
import { ask, Refused } from './ask'
import { membership, remember, type Way } from './membership'

// How a phone gets into a class, and back out of it.

interface Joined {
  class: string
  places: ClassPlaceView[]
  engine: string
  content: string
}

/** Call signs by place: a second one where two people share the phone. */
export interface CallSigns {
  a: string
  b?: string
}

/** Joins a class, or adds the second person to it. Sent again it changes nothing. */
export async function join(way: Way, callSigns: CallSigns): Promise<void> {
  const opened = await store()
  const self = await opened.journal.self()
  const answer = await ask<Joined>('POST', '/join', { ...way, call_signs: callSigns }, self)
  await opened.journal.rename(callSigns.a) // once it is not refused
  await opened.journal.registered(true) // whoever holds a right code is made known on the way
  const { class: id, places, engine, content } = answer
  remember({ id, places, engine, content, way })
}

/** A second person joins on this phone. */
export async function joinAsSecond(callSign: string): Promise<void> {
  const member = membership.value
  const first = member?.places.find(({ place }) => place === 'a')
  if (member && first) await join(member.way, { a: first.call_sign, b: callSign })
}

/** Takes a place in a roster, by the personal code that its owner was given. */
export async function claim(token: string): Promise<string> {
  const { call_sign } = await asDevice((self) => ask<{ call_sign: string }>('POST', '/claim', { token, place: 'a' }, self))
  await (await store()).rename(call_sign)
  return call_sign
}

/** Leaves the class on this phone; what was committed stays with it. */
export function leave(): void {
  remember(undefined)
}

/** Asks as this device, making it known to the server where it is not. */
async function asDevice<T>(run: (self: Self) => Promise<T>): Promise<T> {
  try {
    return await run(await introduced())
  } catch (error) {
    if (!(error instanceof Refused) || error.status !== 401) throw error
    await (await store()).journal.registered(false) // the server was set up anew
    return run(await introduced())
  }
}

/** This device as the server knows it. */
export async function introduced(): Promise<Self> {
  const { journal } = await store()
  const self = await journal.self()
  if (self.registered) return self
  const outcome = await new HTTPServer().register(self)
  if (outcome.kind === 'unreachable') throw new Refused(0, '')
  if (outcome.kind === 'refused') throw new Refused(400, outcome.why)
  if (outcome.kind !== 'acked') await journal.renew() // our id is taken there, by another secret
  await journal.registered(outcome.kind === 'acked')
  return outcome.kind === 'acked' ? { ...self, registered: true } : introduced()
}
