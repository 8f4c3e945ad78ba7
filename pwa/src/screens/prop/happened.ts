import { spokenWithin } from '../../render'
import { prop } from '../../words/prop'
import type { Event } from '../../wire.gen'

// The engine's sudden events as a person reads them: one line for what happens in
// several rooms at once. What and why came in words from the engine's client.

export interface Happening { tS: number; what: string; where: string; cause: string }

/** Rooms that the same kind of event reaches within this time share one line, s. Chosen by us. */
const AT_ONCE_S = 10

/** The events as lines, oldest first. */
export function happened(events: readonly Event[]): Happening[] {
  const lines: { first: Event; rooms: string[] }[] = []
  for (const event of events) {
    const same = lines.find(({ first }) => first.kind === event.kind && event.t_s - first.t_s <= AT_ONCE_S)
    if (!same) lines.push({ first: event, rooms: [event.where] })
    else if (!same.rooms.includes(event.where)) same.rooms.push(event.where)
  }
  return lines.map(({ first, rooms }) => ({
    tS: first.t_s,
    what: first.kind,
    where: prop.rooms(rooms.map(spokenWithin)),
    cause: first.cause,
  }))
}
