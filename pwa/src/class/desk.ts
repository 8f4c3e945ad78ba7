import type {
  ClassDoor,
  ClassKind,
  ClassListed,
  ClassPace,
  ClassPersonReport,
  ClassPlanned,
  ClassReport,
  ClassSet,
  ClassStep,
  Deed,
  Instructor,
  InstructorRole,
  Reply,
  Roster,
} from '../wire.gen'
import { ask, askFile, type Lead } from './ask'
import { locale } from '../words/language'
import { dressed, sentences } from './dress'

// The API that instructors use. Who asks is known by the cookie, or on a phone
// that was handed a class by its key. server/httpapi/README.md is the contract.

/** What stands before signing in. */
export interface DoorStep {
  set_up: boolean
  may_sign_in: boolean
  /** Why not, where not. */
  why?: string
}

export interface Me {
  id: string
  call_sign: string
  role: InstructorRole
  engine: string
  content: string
}

/** A one-time code with its end, in ms of the server's clock. */
export interface OneTime {
  token: string
  until_ms: number
}

export const doorStep = () => ask<DoorStep>('GET', '/door')
export const me = () => ask<Me>('GET', '/me')
export const setUp = (code: string, call_sign: string, pass_phrase: string) => ask<Me>('POST', '/setup', { code, call_sign, pass_phrase })
export const signIn = (call_sign: string, pass_phrase: string) => ask<Me>('POST', '/signin', { call_sign, pass_phrase })
export const signOut = () => ask('POST', '/signout', {})
export const newPhrase = (old: string, next: string) => ask('POST', '/phrase', { old, new: next })
/** Takes an invitation, or sets a new pass phrase by the code of the server's console. */
export const takeCode = (code: string, pass_phrase: string, call_sign: string | undefined) =>
  ask<Me>('POST', '/reset', { code, pass_phrase, ...(call_sign && { call_sign }) })
export const invite = (role: InstructorRole) => ask<{ code: string; until_ms: number }>('POST', '/instructors/invite', { role })
export const instructors = () => ask<{ instructors: Instructor[] }>('GET', '/instructors')
export const changeInstructor = (id: string, role: InstructorRole, shut_out: boolean) => ask('PUT', `/instructors/${id}`, { role, shut_out })
export const audit = (before?: number) => ask<{ deeds: Deed[]; next?: number }>('GET', `/audit?limit=50${before ? `&before=${before}` : ''}`)

/** In the order in which a person looks for a title; numbers in it count as numbers. */
const byTitle = <T extends { title: string }>(all: readonly T[]) => all.toSorted((a, b) => a.title.localeCompare(b.title, locale, { numeric: true }))

/** A seat as it is written: no id makes a new one, no personnel number keeps the old. */
export interface SeatDraft {
  id?: string
  call_sign: string
  personnel?: string
}

export const rosters = async () => ({ rosters: byTitle((await ask<{ rosters: Roster[] }>('GET', '/rosters')).rosters) })
export const addRoster = (title: string, from: { seats: SeatDraft[] } | { csv: string }) => ask<{ roster: Roster }>('POST', '/rosters', { title, ...from })
export const changeRoster = (id: string, title: string, seats: SeatDraft[]) => ask<{ roster: Roster }>('PUT', `/rosters/${id}`, { title, seats })
export const dropRoster = (id: string) => ask('DELETE', `/rosters/${id}`)
export const claimCode = (roster: string, seat: string) => ask<OneTime>('POST', `/rosters/${roster}/seats/${seat}/claim`, {})

export const sets = async () => ({ sets: byTitle((await ask<{ sets: ClassSet[] }>('GET', '/sets')).sets) })
export const saveSet = (id: string | undefined, title: string, scenes: readonly ClassPlanned[]) =>
  ask<{ set: ClassSet }>(id ? 'PUT' : 'POST', id ? `/sets/${id}` : '/sets', { title, scenes })
export const dropSet = (id: string) => ask('DELETE', `/sets/${id}`)

export interface Opening {
  title: string
  set: string
  pace: ClassPace
  rehearsal: boolean
  roster?: string
}

export const openClass = (opening: Opening) => ask<{ class: ClassListed }>('POST', '/classes', opening)
export const listClasses = () => ask<{ classes: ClassListed[] }>('GET', '/classes')
export const oneClass = (id: string, lead?: Lead) => ask<{ class: ClassListed }>('GET', `/classes/${id}`, undefined, lead)
export const report = async (id: string) => dressed(await ask<{ report: ClassReport }>('GET', `/classes/${id}/report`), await sentences())
/** The papers of a class: in a language, with its point or comma, and by the clock here as it stood on the day of the class. */
export const reportPdf = (id: string, { language, point, eastMin }: { language: string; point: string; eastMin: number }) =>
  askFile(`/classes/${id}/report.pdf?${new URLSearchParams({ language, point, east_min: String(eastMin) })}`)
export const reportCsv = (id: string, on: string) => askFile(`/classes/${id}/report.csv?language=${on}`)
export const rosterCsv = (id: string) => askFile(`/rosters/${id}/export.csv`)
export const person = async (id: string, number: number, lead?: Lead) =>
  dressed(await ask<{ person: ClassPersonReport }>('GET', `/classes/${id}/people/${number}`, undefined, lead), await sentences())
export const newCode = (id: string) => ask<{ door: ClassDoor }>('POST', `/classes/${id}/code`, {})
export const leadCode = (id: string) => ask<OneTime>('POST', `/classes/${id}/lead`, {})
export const leads = (id: string) => ask<{ leads: { id: string; from_ms: number; seen_ms: number }[] }>('GET', `/classes/${id}/leads`)
export const dropLead = (id: string, lead: string) => ask('DELETE', `/classes/${id}/leads/${lead}`)
/** A phone takes the class that it was handed. */
export const takeLead = (token: string) => ask<{ class: string; key: string }>('POST', '/lead', { token })

/** Something an instructor does to a class; of the parts only those that the kind calls for. */
export interface Act {
  kind: Exclude<ClassKind, 'opened' | 'joined' | 'moved' | 'committed'> | 'sheet'
  scene?: string
  to?: ClassStep
  add_s?: number
  person?: number
  call_sign?: string
  seat?: string
  ask?: string
  on?: boolean
  note?: string
  planned?: ClassPlanned
  order?: string[]
  replies?: Reply[]
  confidence?: number
}

export const act = (id: string, what: Act, lead?: Lead) => ask<{ seq: number }>('POST', `/classes/${id}/do`, { act: what }, lead)
