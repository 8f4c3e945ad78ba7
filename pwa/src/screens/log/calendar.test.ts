import ICAL from 'ical.js'
import { expect, test } from 'vitest'
import { fold, refreshers, toCalendar } from './calendar'

const day = 86_400_000
const now = Date.UTC(2026, 10, 25, 12)
const said = {
  summary: 'Read smoke: a set of scenes; commas, semicolons and \\ too',
  description: (n: number) => `${n} kinds of scene want to be seen again.\nTraining only. Día de repaso: señales de humo, plano neutral y vías de flujo.`,
}
const trials = [
  { family: 'a', t: now - 9 * day, error: 0 },
  { family: 'b', t: now - day, error: 0 },
  { family: 'c', t: now - 60_000, error: 1 },
]
const text = toCalendar(refreshers(trials, now), said, 'f'.repeat(32), now)

test('a calendar program reads back what was meant', () => {
  const events = new ICAL.Component(ICAL.parse(text)).getAllSubcomponents('vevent').map((one) => new ICAL.Event(one))
  expect(events.map(({ startDate }) => startDate.toString())).toEqual(refreshers(trials, now).map((one) => one.day))
  expect(events[0]!.startDate.isDate).toBe(true)
  expect(events[0]!.summary).toBe(said.summary)
  expect(events[0]!.description).toBe(said.description(refreshers(trials, now)[0]!.families))
  expect(new Set(events.map(({ uid }) => uid)).size).toBe(events.length)
})

// RFC 5545, https://www.rfc-editor.org/rfc/rfc5545: the sections named.
test('the rules of the RFC hold', () => {
  expect(text.endsWith('\r\n')).toBe(true)
  expect(text.replaceAll('\r\n', '')).not.toMatch(/[\r\n]/) // 3.1: every line ends in CRLF
  for (const line of text.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75) // 3.1
  const unfolded = text.replaceAll('\r\n ', '').split('\r\n')
  expect(unfolded[0]).toBe('BEGIN:VCALENDAR')
  for (const once of [/^VERSION:2\.0$/, /^PRODID:/]) expect(unfolded.filter((line) => once.test(line))).toHaveLength(1) // 3.6
  const count = (pattern: RegExp) => unfolded.filter((line) => pattern.test(line)).length
  const entries = count(/^BEGIN:VEVENT$/)
  expect(entries).toBeGreaterThan(1)
  for (const needed of [/^UID:/, /^DTSTAMP:\d{8}T\d{6}Z$/, /^DTSTART;VALUE=DATE:\d{8}$/, /^END:VEVENT$/]) expect(count(needed)).toBe(entries) // 3.6.1
})

test('a line is never folded within a character', () => {
  const folded = fold('é'.repeat(100))
  expect(folded.replaceAll('\r\n ', '')).toBe('é'.repeat(100))
  for (const line of folded.split('\r\n')) expect(Buffer.byteLength(line)).toBeLessThanOrEqual(75)
})

test('what is overdue is due today, and what went wrong comes first', () => {
  const list = refreshers(trials, now)
  expect(list[0]!.day).toBe('2026-11-25')
  expect(list.reduce((sum, { families }) => sum + families, 0)).toBe(3)
})
