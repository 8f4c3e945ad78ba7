import { useState } from 'preact/hooks'
import { chooseTheme, theme, themes } from '../../app/theme'
import type { Self } from '../../local/self'
import { store } from '../../local/store'
import type { Result } from '../../local/sync'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { Dialog } from '../../ui/dialog'
import { LanguageSwitch } from '../../ui/language-switch'
import { OfflineNote } from '../../ui/offline-note'
import { TextField } from '../../ui/text-field'
import { words } from '../../words/frame'
import { log } from '../../words/log'
import { chooseUnits, systems, units } from '../../words/units'
import type { QuizEvent } from '../../wire.gen'
import { Moving } from '../../local/move'
import { download, toCSV, toJSON } from './export'
import { Keeping } from './keeping'
import { Move, Take } from './move'

/** Who one is here, syncing, colours, and what one may do with one's own data. */
export function Own({ self, events }: { self: Self; events: readonly QuizEvent[] }) {
  return (
    <>
      <section class="stack">
        <h2>{log.you}</h2>
        <CallSign key={self.callSign} callSign={self.callSign} />
        {events.length > 0 && <SyncNow unsynced={self.next - 1 - self.acked} />}
        <Take self={self} />
        <OfflineNote />
        <Keeping />
        <h3 class="label">{log.theme}</h3>
        <Choices
          label={log.theme}
          columns={4}
          choices={themes.map((value) => ({ value, name: words.themes[value] }))}
          chosen={theme.value}
          choose={chooseTheme}
        />
        <h3 class="label">{log.units}</h3>
        <Choices
          label={log.units}
          columns={2}
          choices={systems.map((value) => ({ value, name: log.unitSystems[value] }))}
          chosen={units.value}
          choose={chooseUnits}
        />
        <LanguageSwitch />
      </section>
      <section class="stack">
        <h2>{log.yours}</h2>
        <Button onClick={() => download('lintel-log.json', 'application/json', toJSON(self.callSign, events))}>
          {log.exportJSON}
        </Button>
        <Button onClick={() => download('lintel-ratings.csv', 'text/csv', toCSV(events))}>{log.exportCSV}</Button>
        <Move self={self} />
        <Erase unsynced={self.next - 1 - self.acked} />
      </section>
    </>
  )
}

/** The longest call sign that the server takes (quiz.MaxCallSign). */
const longest = 32

function CallSign({ callSign }: { callSign: string }) {
  const [typed, setTyped] = useState(callSign)
  const [kept, setKept] = useState(false)
  const keep = async (event: Event) => {
    event.preventDefault()
    const opened = await store()
    await opened.rename(typed.trim())
    setKept(true)
  }
  return (
    <form class="stack" onSubmit={(event) => void keep(event)}>
      <TextField label={log.callSign} value={typed} set={(next) => (setTyped(next), setKept(false))} hint={log.callSignWhy} most={longest} />
      <button type="submit" class="button button-plain" disabled={!typed.trim() || typed.trim() === callSign}>
        {kept ? log.kept : log.keepCallSign}
      </button>
    </form>
  )
}

function SyncNow({ unsynced }: { unsynced: number }) {
  const [state, setState] = useState<Result | 'syncing'>()
  const run = async () => {
    setState('syncing')
    setState(await (await store()).syncNow())
  }
  const said = unsynced === 0 ? log.allSynced : state === 'unreachable' ? log.unreachable : state === 'refused' ? log.refused : ''
  return (
    <div class="stack">
      <p role="status">{said || words.sync.unsynced(unsynced)}</p>
      {unsynced > 0 && (
        <Button onClick={() => void run()} disabled={state === 'syncing'}>
          {state === 'syncing' ? log.syncing : log.syncNow}
        </Button>
      )}
    </div>
  )
}

function Erase({ unsynced }: { unsynced: number }) {
  const [asking, setAsking] = useState(false)
  const [failed, setFailed] = useState(false)
  const erase = async (there: boolean) => {
    const opened = await store()
    if (there && !(await new Moving(opened.journal).forget())) return setFailed(true)
    await opened.erase()
    return setAsking(false)
  }
  return (
    <>
      <Button onClick={() => setAsking(true)}>{log.erase}</Button>
      {asking && (
        <Dialog title={log.erase} close={() => setAsking(false)}>
          <p>{log.eraseSure}</p>
          {unsynced > 0 && <p>{log.eraseUnsynced(unsynced)}</p>}
          <p>{log.eraseServer}</p>
          {failed && <p role="alert">{log.eraseFailed}</p>}
          <div class="row">
            <Button onClick={() => setAsking(false)}>{log.keep}</Button>
            <Button onClick={() => void erase(true)}>{log.eraseBoth}</Button>
            <Button look="main" onClick={() => void erase(false)}>
              {log.eraseNow}
            </Button>
          </div>
        </Dialog>
      )}
    </>
  )
}
