import { words } from '../words/frame'
import type { EventKind, QuizEvent } from '../wire.gen'

// What a device's history is, as plain data and pure steps from one state to the
// next. Where it is kept is the shelf's business (shelf.ts), and a simulator of
// bad days runs the very same steps over a shelf of its own (sim/).

/** Who this device is to the server, and how far its history has got. */
export interface Self {
  device: string
  secret: string
  callSign: string
  /** The server knows the device under this call sign. */
  registered: boolean
  /** The sequence number that the next event takes. */
  next: number
  /** The server holds every event up to this one. */
  acked: number
  /** A code that moves this history to another phone was shown at some time. */
  offered?: boolean
  /** It was taken there: nothing is sent from here any more. */
  moved?: boolean
  /** Another phone's history that is being taken over. Kept before it is asked for: no answer that is lost may lose it. */
  taking?: Taking
}

/** The history that a code offers, with the secret that it will have here. */
export interface Taking {
  device: string
  secret: string
  callSign: string
  /** When it was asked for, ms by this phone's clock. */
  since: number
}

/** Random bytes in lower-case hex: chance comes from outside. */
export type Hex = (bytes: number) => string

export function newSelf(hex: Hex): Self {
  return { device: hex(16), secret: hex(32), callSign: words.app.newcomer(hex(2).toUpperCase()), registered: false, next: 1, acked: 0 }
}

/** What happened, before it has a number. */
export interface Happening {
  id: string
  kind: EventKind
  engine: string
  body: unknown
  t_client: number
}

/** The next event of a history, and the history with it. */
export function numbered(self: Self, what: Happening): { self: Self; event: QuizEvent } {
  const { id, engine, t_client, kind, body } = what
  const event: QuizEvent = { v: 1, id, device: self.device, seq: self.next, engine, t_client, kind, body }
  return { self: { ...self, next: self.next + 1 }, event }
}

/** The server holds everything up to seq. Never moves backward: replies may overtake each other. */
export function acknowledged(self: Self, seq: number): Self {
  return { ...self, acked: Math.max(self.acked, Math.min(seq, self.next - 1)) }
}

/** The server holds less than we thought (it was restored from a backup): send again from there. */
export function rewound(self: Self, seq: number): Self {
  return { ...self, acked: Math.min(self.acked, seq) }
}

/** A new identity over the same events, for when the server holds another history under the old one. */
export function renewed(self: Self, hex: Hex): Self {
  return { ...newSelf(hex), callSign: self.callSign, next: self.next }
}

/** Another phone's history is about to be asked for here, or will not come after all. */
export function taking(self: Self, what: Taking | undefined): Self {
  const rest = { ...self }
  delete rest.taking
  return what ? { ...rest, taking: what } : rest
}
