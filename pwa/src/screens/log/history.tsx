import { useEffect, useState } from 'preact/hooks'
import { engine } from '../../worker/client'
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
  const titles = useTitles()
  return (
    <section class="stack">
      <h2>{log.history}</h2>
      <ol class="history">
        {events
          .slice(-most)
          .toReversed()
          .map((event) => (
            <li key={event.seq}>
              <span>{about(event, titles)}</span>
              <span class="small soft">
                {[new Date(event.t_client).toLocaleString(locale, { dateStyle: 'medium', timeStyle: 'short' }), ...scoredBy(event), event.seq > acked ? log.waiting : log.synced].join(' · ')}
              </span>
            </li>
          ))}
      </ol>
      {events.length > most && <p class="small soft">{log.of(most, events.length)}</p>}
    </section>
  )
}

/** What the families of scenes are called; nothing until the engine has said so. */
function useTitles(): ReadonlyMap<string, string> {
  const [titles, setTitles] = useState<ReadonlyMap<string, string>>(new Map())
  useEffect(() => {
    engine.families().then((all) => setTitles(new Map(all.map(({ id, title }) => [id, title]))), () => {})
  }, [])
  return titles
}

/** An answer stays scored as it was on the device, by the version that did it. */
function scoredBy({ kind, body }: QuizEvent): string[] {
  return kind === 'answer' ? [log.scoredBy((body as AnswerBody).verdict.engine)] : []
}

/** One line on what happened, as a whole sentence. */
function about(event: QuizEvent, titles: ReadonlyMap<string, string>): string {
  if (event.kind === 'answer') {
    const { answer, verdict: { parts } } = event.body as AnswerBody
    return log.drilled({ scene: answer.own ? undefined : titles.get(answer.family), right: parts.filter(({ right }) => right).length, of: parts.length })
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
