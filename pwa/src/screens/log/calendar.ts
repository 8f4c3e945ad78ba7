import { remember } from '../../practice/memory'
import type { Trial } from '../../practice/memory'

// Refresher dates in the form that every calendar reads: iCalendar, RFC 5545.

/** One day on which so many families want to be seen again. */
export interface Refresher {
  /** The local day, "2026-12-01". */
  day: string
  families: number
}

// Not farther ahead than a quarter, and not more than a week's worth of entries:
// practice moves the dates anyway. Chosen by us.
const aheadDays = 92
const most = 8

/** The days on which memory says that families are due, the overdue ones today. */
export function refreshers(trials: readonly Trial[], now: number): Refresher[] {
  const days = new Map<string, number>()
  for (const { due } of remember(trials).values()) {
    const at = Math.max(now, due.getTime())
    if (at - now > aheadDays * 86_400_000) continue
    days.set(localDay(at), (days.get(localDay(at)) ?? 0) + 1)
  }
  return [...days]
    .map(([day, families]) => ({ day, families }))
    .toSorted((a, b) => a.day.localeCompare(b.day))
    .slice(0, most)
}

function localDay(ms: number): string {
  const date = new Date(ms)
  const two = (n: number) => String(n).padStart(2, '0')
  return `${date.getFullYear()}-${two(date.getMonth() + 1)}-${two(date.getDate())}`
}

interface Said {
  summary: string
  description(families: number): string
}

/**
 * A calendar of whole-day entries (3.6.1, 3.8.2.4 VALUE=DATE), which take no time
 * from anyone (TRANSP:TRANSPARENT, 3.8.2.7). A day keeps its UID (3.8.4.7), so that
 * a newer file replaces the entry instead of doubling it. No person is named.
 */
export function toCalendar(list: readonly Refresher[], said: Said, device: string, now: number): string {
  const stamp = new Date(now).toISOString().replace(/[-:]|\.\d+/g, '')
  const entries = list.flatMap(({ day, families }) => [
    'BEGIN:VEVENT',
    `UID:${day}-${device.slice(0, 12)}@lintel.invalid`,
    `DTSTAMP:${stamp}`,
    `DTSTART;VALUE=DATE:${day.replaceAll('-', '')}`,
    `SUMMARY:${escape(said.summary)}`,
    `DESCRIPTION:${escape(said.description(families))}`,
    'TRANSP:TRANSPARENT',
    'END:VEVENT',
  ])
  const lines = ['BEGIN:VCALENDAR', 'VERSION:2.0', 'PRODID:-//Lintel//Refreshers//EN', 'CALSCALE:GREGORIAN', ...entries, 'END:VCALENDAR']
  return lines.map((line) => fold(line) + '\r\n').join('')
}

/** Backslash, semicolon, comma and line ends in text (3.3.11). */
function escape(text: string): string {
  return text.replace(/[\\;,]/g, '\\$&').replace(/\r?\n/g, '\\n')
}

const longest = 75 // octets of a line, without its end (3.1)

/** Longer lines go on after a line end and one space, never within a character (3.1). */
export function fold(line: string): string {
  const parts: string[] = []
  let [part, octets] = ['', 0]
  for (const letter of line) {
    const more = new TextEncoder().encode(letter).length
    if (octets + more > longest) {
      parts.push(part)
      part = ''
      octets = 1 // the space that the next line begins with
    }
    part += letter
    octets += more
  }
  return [...parts, part].join('\r\n ')
}
