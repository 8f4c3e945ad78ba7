import { useEffect, useState } from 'preact/hooks'
import type { Self } from '../../local/self'
import { sync } from '../../local/status'
import { changes, store } from '../../local/store'
import { Page } from '../../ui/page'
import { words } from '../../words/en'
import { log } from '../../words/en/log'
import type { QuizEvent } from '../../wire.gen'
import { Calls, Cues } from './cues'
import { History } from './history'
import { Own } from './own'
import { answersOf, recordOf } from './record'
import './log.css'

/** The Log: one's own record, from this device, readable with no server. */
export default function Log() {
  const [shown, setShown] = useState<{ self: Self; events: QuizEvent[] }>()
  const asOf = `${changes.value} ${sync.value.unsynced}`
  useEffect(() => {
    let wanted = true
    void (async () => {
      const { journal } = await store()
      const [self, events] = await Promise.all([journal.self(), journal.events()])
      if (wanted) setShown({ self, events })
    })()
    return () => {
      wanted = false
    }
  }, [asOf])

  return (
    <Page title={words.screens.log.name}>
      {shown && (
        <div class="stack log">
          <Practice events={shown.events} acked={shown.self.acked} />
          <Own self={shown.self} events={shown.events} />
        </div>
      )}
    </Page>
  )
}

function Practice({ events, acked }: { events: QuizEvent[]; acked: number }) {
  if (events.length === 0) return <p>{log.empty}</p>
  const record = recordOf(answersOf(events))
  return (
    <>
      {record.levels.size + record.plane.count > 0 && <Cues record={record} />}
      <Calls record={record} />
      <History events={events} acked={acked} />
    </>
  )
}
