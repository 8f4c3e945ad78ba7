import { isBurn, type Note } from '../prop/burning/record'
import { spellNote } from '../prop/burning/spell-note'
import { log } from '../../words/log'
import { isTold, spellFirst, type StagesRead } from '../../words/stages'
import { locale } from '../../words/language'
import type { AnswerBody, QuizEvent } from '../../wire.gen'

/** How many of the latest events are listed. Chosen by us. */
const most = 20

/** The latest events of this device, newest first, each with whether the server holds it. */
export function History({ events, acked }: { events: readonly QuizEvent[]; acked: number }) {
  return (
    <section class="stack">
      <h2>{log.history}</h2>
      <ol class="history">
        {events
          .slice(-most)
          .toReversed()
          .map((event) => (
            <li key={event.seq}>
              <span>{about(event)}</span>
              <span class="small soft">
                {new Date(event.t_client).toLocaleString(locale)} · {event.seq > acked ? log.waiting : log.synced}
              </span>
            </li>
          ))}
      </ol>
      {events.length > most && <p class="small soft">{log.of(most, events.length)}</p>}
    </section>
  )
}

/** One line on what happened, as a whole sentence. */
function about(event: QuizEvent): string {
  if (event.kind === 'answer') {
    const { parts } = (event.body as AnswerBody).verdict
    return log.drilled({ right: parts.filter(({ right }) => right).length, of: parts.length })
  }
  if (event.kind === 'size_up') {
    const { finding } = event.body as { finding: StagesRead }
    return isTold(finding) ? log.sizedUp(spellFirst(finding)) : log.sizedUpUndetermined
  }
  return isBurn(event) ? log.burn(spellBurn(event.body)) : log.noted
}

/** A live burn's note: the timeline's own words, and words for what the timeline does not list. */
function spellBurn(note: Note): string {
  switch (note.what) {
    case 'begin':
      return log.burnBegun(note.signed)
    case 'skip':
    case 'strike':
    case 'end':
      return log.burnNotes[note.what]
    default:
      return spellNote(note)
  }
}
