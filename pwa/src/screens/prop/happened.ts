import { spoken, spokenWithin } from '../../render'
import { prop } from '../../words/prop'
import { temperature } from '../../words/units'
import type { Event, Scenario } from '../../wire.gen'

// The engine's sudden events as a person reads them: names for ids, units as
// they are written, and one line for what happens in several rooms at once.

export interface Happening { tS: number; what: string; where: string; cause: string }

/** Rooms that the same kind of event reaches within this time share one line, s. Chosen by us. */
const AT_ONCE_S = 10

/** The events as lines, oldest first. */
export function happened(events: readonly Event[], scenario: Scenario): Happening[] {
  const lines: { first: Event; rooms: string[] }[] = []
  for (const event of events) {
    const same = lines.find(({ first }) => first.kind === event.kind && event.t_s - first.t_s <= AT_ONCE_S)
    if (!same) lines.push({ first: event, rooms: [event.where] })
    else if (!same.rooms.includes(event.where)) same.rooms.push(event.where)
  }
  return lines.map(({ first, rooms }) => ({
    tS: first.t_s,
    what: prop.eventKinds[first.kind] ?? spoken(first.kind),
    where: prop.rooms(rooms.map(spokenWithin)),
    cause: plainly(first.cause, scenario),
  }))
}

/** A cause with the names of openings and compartments in place of their ids, and units as they are written. */
function plainly(cause: string, { openings, compartments }: Scenario): string {
  const names = new Map([
    ...openings.map((opening): [string, string] => [opening.id, spokenWithin(opening.id)]),
    ...compartments.map(({ id }): [string, string] => [id, spokenWithin(id)]),
  ])
  const text = cause
    .replace(/\b[a-z]+(?:_[a-z0-9]+)*\b/g, (word) => names.get(word) ?? word)
    .replace(/(-?\d+) C\b/g, (_, c: string) => temperature(Number(c)))
    .replace(/kW\/m2\b/g, 'kW/m²')
  return text.charAt(0).toUpperCase() + text.slice(1)
}
