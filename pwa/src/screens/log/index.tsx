import { useEffect, useState } from 'preact/hooks'
import type { Self } from '../../local/self'
import { sync } from '../../local/status'
import { changes, store } from '../../local/store'
import { progressOf } from '../../practice/progress'
import { answersOf, type Answered } from '../../practice/record'
import { Page } from '../../ui/page'
import { words } from '../../words/frame'
import { log } from '../../words/log'
import type { Progress, QuizEvent } from '../../wire.gen'
import { History } from './history'
import { Own } from './own'
import { recordOf } from './record'
import { Refreshers } from './refreshers'
import { Calls } from './reports'
import { Skills } from './skills'
import { Tests } from './tests'
import './log.css'

interface Shown {
  self: Self
  events: QuizEvent[]
  answers: Answered[]
}

/** The Log: one's own record, from this device, readable with no server. */
export default function Log() {
  const [shown, setShown] = useState<Shown>()
  const [lost, setLost] = useState(false)
  const asOf = `${changes.value} ${sync.value.unsynced}`
  useEffect(() => {
    let wanted = true
    void (async () => {
      const { journal } = await store()
      const [self, events] = await Promise.all([journal.self(), journal.events()])
      if (wanted) setShown({ self, events, answers: answersOf(events) })
    })().catch(() => wanted && setLost(true))
    return () => {
      wanted = false
    }
  }, [asOf])

  return (
    <Page title={words.screens.log.name} wide>
      {lost && <p>{log.lost}</p>}
      {shown && (
        <div class="stack log">
          {shown.events.length === 0 && <p>{log.empty}</p>}
          {shown.answers.length > 0 && <Practice {...shown} />}
          {shown.events.length > 0 && <History events={shown.events} acked={shown.self.acked} />}
          <Own self={shown.self} events={shown.events} />
        </div>
      )}
    </Page>
  )
}

function Practice({ self, answers }: Shown) {
  const { progress, failed } = useProgress(answers)
  return (
    <>
      {progress ? (
        <>
          <Skills progress={progress} record={recordOf(answers)} />
          <Calls progress={progress} />
        </>
      ) : (
        <p role="status">{failed === undefined ? log.adding : log.notAdded(failed)}</p>
      )}
      <Tests answers={answers} device={self.device} />
      <Refreshers answers={answers} device={self.device} />
    </>
  )
}

function useProgress(answers: readonly Answered[]): { progress?: Progress; failed?: string } {
  const [added, setAdded] = useState<{ progress?: Progress; failed?: string }>({})
  useEffect(() => {
    let wanted = true
    progressOf(answers).then(
      (progress) => wanted && setAdded({ progress }),
      (error: unknown) => wanted && setAdded({ failed: error instanceof Error ? error.message : String(error) }),
    )
    return () => {
      wanted = false
    }
  }, [answers])
  return added
}
