import { useState } from 'preact/hooks'
import { go } from '../../app/router'
import { addRoster, changeRoster, dropRoster, rosterCsv, rosters, type SeatDraft } from '../../class/desk'
import { saveFile } from '../../local/save-file'
import { Button } from '../../ui/button'
import { Page } from '../../ui/page'
import { TextField } from '../../ui/text-field'
import { desk } from '../../words/class-desk'
import type { Roster } from '../../wire.gen'
import { Drop } from './drop'
import { FromTable } from './from-table'
import { rosterRefused } from './roster-refused'
import { SeatRow, type SeatLine } from './seat-row'
import { found, useDoing, useLoaded } from './use-loaded'

/** One roster: made from a table or by hand, and changed. */
export function OneRoster({ id }: { id: string }) {
  const { value, failed, again } = useLoaded(async () => (id === 'new' ? undefined : found((await rosters()).rosters, id)))
  const ready = id === 'new' || value
  return (
    <Page title={value?.title ?? desk.newRoster} wide>
      {failed && <p role="alert">{failed}</p>}
      {!ready && !failed && <p role="status">{desk.looking}</p>}
      {ready && <Editor key={value && JSON.stringify(value)} held={value} saved={again} />}
    </Page>
  )
}

function Editor({ held, saved }: { held: Roster | undefined; saved(): void }) {
  const [title, setTitle] = useState(held?.title ?? '')
  const [lines, setLines] = useState<readonly SeatLine[]>(held?.seats.map(line) ?? [])
  const { failed, doing, run } = useDoing(rosterRefused)
  const [byTable, setByTable] = useState(false)
  const name = title.trim()
  const missing = (filled: unknown) => (name === '' || !filled) && desk.rosterMissing
  const add = (from: Parameters<typeof addRoster>[1]) => {
    setByTable('csv' in from)
    return run(async () => {
      const { roster } = await addRoster(name, from)
      go(`/instructor/rosters/${roster.id}`)
    }, missing('csv' in from ? from.csv.trim() : from.seats.length))
  }
  const save = () => (held ? run(() => changeRoster(held.id, name, seats(lines)).then(saved), missing(lines.length)) : add({ seats: seats(lines) }))
  const drop = () => run(() => dropRoster(held!.id).then(() => go('/instructor/rosters')))
  return (
    <div class="desk-edit">
      <TextField label={desk.rosterTitle} value={title} set={setTitle} most={80} />
      <div class="desk-beside">
        {held ? <Papers held={held} /> : <FromTable failed={byTable ? failed : undefined} doing={doing} make={(csv) => void add({ csv })} />}
      </div>
      <div class="stack stack-wide">
        <ul class="desk-list seats">
          {lines.map((one, at) => (
            <SeatRow key={one.key} line={one} change={(next) => setLines(next ? lines.with(at, next) : lines.toSpliced(at, 1))} />
          ))}
        </ul>
        <div>
          <Button onClick={() => setLines([...lines, { key: `new ${lines.length} ${Date.now()}`, call_sign: '', personnel: '' }])}>{desk.addSeat}</Button>
        </div>
        {failed && !byTable && <p role="alert">{failed}</p>}
        <div class="row">
          <Button look="main" disabled={doing} onClick={() => void save()}>
            {desk.saveRoster}
          </Button>
          {held && <Drop name={desk.dropRoster} why={desk.dropRosterSure} disabled={doing} drop={() => void drop()} />}
        </div>
        <p>
          <a class="lone-link" href="/instructor/rosters">{desk.rosters}</a>
        </p>
      </div>
    </div>
  )
}

function Papers({ held }: { held: Roster }) {
  const { failed, doing, run } = useDoing()
  const csv = async () => saveFile('roster.csv', await rosterCsv(held.id))
  return (
    <section class="stack">
      <a class="button button-plain" href={`/instructor/rosters/${held.id}/codes`}>
        {desk.claimSheets}
      </a>
      <p class="small soft">{desk.claimSheetsWhy}</p>
      {failed && <p role="alert">{failed}</p>}
      <Button wide disabled={doing} onClick={() => void run(csv)}>
        {desk.exportCsv}
      </Button>
    </section>
  )
}

const line = ({ id, call_sign, numbered, claimed_ms }: Roster['seats'][number]): SeatLine => ({
  key: id,
  id,
  call_sign,
  personnel: '',
  numbered,
  claimed: claimed_ms > 0,
})

/** A number left empty stays as the server holds it. */
const seats = (lines: readonly SeatLine[]): SeatDraft[] =>
  lines.map(({ id, call_sign, personnel }) => ({
    ...(id && { id }),
    call_sign: call_sign.trim(),
    ...(personnel.trim() && { personnel: personnel.trim() }),
  }))
