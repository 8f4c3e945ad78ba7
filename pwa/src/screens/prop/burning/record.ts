import type { Move, QuizEvent } from '../../../wire.gen'

// The log of a live burn as notes in the device's history: each entry is an event
// of its own, written to the disk before its tick shows and sent like any other.
// The log is folded from them, so it stands again after a reload.

/** What one note of a burn holds. `at` is the device's clock, ms. */
export type Note =
  | { what: 'begin'; checks: string[]; signed: string; stop_word: string }
  | { what: 'lit' }
  | { what: 'move'; opening: string; open: number; planned?: number }
  | { what: 'skip'; planned: number }
  | { what: 'call'; call: string }
  | { what: 'strike'; entry: string }
  | { what: 'end' }

export type Body = Note & { v: 1; about: 'prop_burn'; burn: string; at: number }

/** An entry that can be seen on the timeline. */
export interface Entry { id: string; at: number; note: Extract<Note, { what: 'lit' | 'move' | 'call' }>; struck: boolean }

export interface BurnLog {
  burn: string
  signed: string
  stopWord: string
  /** When it was lit, ms; undefined before. */
  litAt: number | undefined
  entries: Entry[]
  /** Steps of the plan that were made or left out. */
  passed: ReadonlySet<number>
  ended: boolean
}

export const isBurn = (event: QuizEvent): event is QuizEvent & { body: Body } =>
  event.kind === 'note' && (event.body as Partial<Body> | null)?.about === 'prop_burn'

/** The newest burn of a history. */
export function newestBurn(events: readonly QuizEvent[]): BurnLog | undefined {
  const notes = events.filter(isBurn)
  const burn = notes.at(-1)?.body.burn
  return burn === undefined ? undefined : fold(notes.filter(({ body }) => body.burn === burn))
}

function fold(notes: readonly (QuizEvent & { body: Body })[]): BurnLog {
  const struck = new Set(notes.flatMap(({ body }) => (body.what === 'strike' ? [body.entry] : [])))
  const log: BurnLog = { burn: notes[0]!.body.burn, signed: '', stopWord: '', litAt: undefined, entries: [], passed: new Set(), ended: false }
  const passed = new Set<number>()
  for (const { id, body } of notes) {
    if (body.what === 'begin') Object.assign(log, { signed: body.signed, stopWord: body.stop_word })
    if (body.what === 'end') log.ended = true
    if (body.what === 'lit' && !struck.has(id)) log.litAt ??= body.at
    if (body.what === 'lit' || body.what === 'move' || body.what === 'call') log.entries.push({ id, at: body.at, note: body, struck: struck.has(id) })
    if ((body.what === 'move' || body.what === 'skip') && body.planned !== undefined && !struck.has(id)) passed.add(body.planned)
  }
  return { ...log, passed }
}

/** Seconds from the flame to an entry; before it, none. */
export const secondsAfter = (log: BurnLog, at: number): number => Math.max(0, (at - (log.litAt ?? at)) / 1000)

/** How every opening stands after what was logged. */
export function standing(log: BurnLog, before: Readonly<Record<string, number>>): Record<string, number> {
  const stands = { ...before }
  for (const { note, struck } of log.entries) if (note.what === 'move' && !struck) stands[note.opening] = note.open
  return stands
}

/** What was logged, as moves for the simulated box: those made before the flame come with it. */
export function simulated(log: BurnLog): Move[] {
  return log.entries.flatMap(({ note, at, struck }) => (note.what === 'move' && !struck ? [{ t_s: secondsAfter(log, at), opening: note.opening, open: note.open }] : []))
}
