import { saveFile } from '../../local/save-file'
import { store } from '../../local/store'
import { words } from '../../words/frame'
import type { QuizEvent } from '../../wire.gen'
import { answersOf } from '../../practice/record'

// One's own data in open forms. Every file begins and ends with the training banner.

const banner = words.caution.banner

/** Everything, as it lies on the device. */
export function toJSON(callSign: string, events: readonly QuizEvent[]): string {
  return JSON.stringify({ v: 1, notice: banner, call_sign: callSign, events, end: banner }, null, 2)
}

const columns = ['time', 'family', 'seed', 'ask', 'given', 'truth', 'error', 'steps', 'right'] as const

/** One line a rating (RFC 4180, from memory). */
export function toCSV(events: readonly QuizEvent[]): string {
  const rows = answersOf(events).flatMap(({ answer, verdict, t }) =>
    verdict.parts.map((part) => [
      new Date(t).toISOString(),
      answer.family,
      answer.seed,
      part.ask,
      valueOf(part.given),
      part.truth.map(valueOf).join(' or '),
      part.error,
      part.steps ?? '',
      part.right,
    ]),
  )
  return [[banner], columns, ...rows, [banner]].map((row) => row.map(cell).join(',')).join('\r\n')
}

function valueOf({ ask: _ask, ...said }: { ask: string }): string {
  return Object.values(said).map(String).join(' ')
}

/** A cell that a spreadsheet takes for text, by whatever it parts cells, even where a formula could begin (as server/spreadsheet does). */
function cell(value: string | number | boolean): string {
  if (typeof value !== 'string') return String(value)
  const text = value.replace(/[;,|\t\r\n]["' ]*(?=[=+\-@\t\r\n＝＋－＠])/g, "$&'").replace(/^(?=[=+\-@\t\r\n＝＋－＠])/, "'")
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text
}

export function download(name: string, type: string, text: string): void {
  saveFile(name, new Blob([text], { type }))
}

/** Everything on this device as a file: what one can still do when there is no room left. */
export async function exportEverything(): Promise<void> {
  const { journal } = await store()
  const [self, events] = await Promise.all([journal.self(), journal.events()])
  download('lintel-log.json', 'application/json', toJSON(self.callSign, events))
}
