import { useState } from 'preact/hooks'
import { go } from '../../app/router'
import { listClasses, openClass, rosters, sets } from '../../class/desk'
import { Button } from '../../ui/button'
import { TextField } from '../../ui/text-field'
import { classes } from '../../words/class'
import { desk } from '../../words/class-desk'
import { locale } from '../../words/language'
import type { ClassListed, ClassPace, ClassSet, Roster } from '../../wire.gen'
import { Pick } from './pick'
import { ReadySet } from './ready-set'
import { useDoing, useLoaded } from './use-loaded'

/** The classes that go on and have been, and opening another. */
export function Classes() {
  const { value, failed, again } = useLoaded(load)
  if (failed) return <p role="alert">{failed}</p>
  if (!value) return <p role="status">{desk.looking}</p>
  const open = value.classes.filter(({ ended_ms }) => ended_ms === 0)
  const over = value.classes.filter(({ ended_ms }) => ended_ms > 0)
  return (
    <div class="desk-two">
      <section class="stack">
        <h2>{desk.open}</h2>
        {value.sets.length > 0 ? <Open sets={value.sets} rosters={value.rosters} /> : <NoSet made={again} />}
      </section>
      <div class="stack stack-wide">
        {value.classes.length === 0 && <p class="soft">{desk.noClasses}</p>}
        <List title={desk.goingOn} all={open} />
        <List title={desk.over} all={over} />
      </div>
    </div>
  )
}

async function load() {
  const [listed, set, roster] = await Promise.all([listClasses(), sets(), rosters()])
  return { ...listed, ...set, ...roster }
}

function List({ title, all }: { title: string; all: readonly ClassListed[] }) {
  if (all.length === 0) return null
  return (
    <section class="stack">
      <h2>{title}</h2>
      <ul class="desk-list">
        {all.map((one) => (
          <li key={one.id}>
            <div>
              <strong>{one.title}</strong>
              <p class="small soft">
                {[date(one.opened_ms), classes.steps[one.step], desk.people(one.people), one.rehearsal && desk.rehearsal].filter(Boolean).join(', ')}
              </p>
            </div>
            <span class="row">
              {one.ended_ms === 0 && (
                <a class="button button-plain" href={`/board/${one.id}`}>
                  {desk.toBoard}
                </a>
              )}
              <a class="button button-quiet" href={`/instructor/class/${one.id}`}>
                {desk.report}
              </a>
            </span>
          </li>
        ))}
      </ul>
    </section>
  )
}

export const date = (ms: number) => new Date(ms).toLocaleString(locale, { dateStyle: 'medium', timeStyle: 'short' })
const day = (ms: number) => new Date(ms).toLocaleDateString(locale, { dateStyle: 'long' })

/** A class needs scenes: some made ready here, or a set built by hand. */
function NoSet({ made }: { made(): void }) {
  return (
    <>
      <p>{desk.openNeedsSet}</p>
      <ReadySet made={made} />
      <p>
        <a class="lone-link" href="/instructor/sets/new">
          {desk.newSet}
        </a>
      </p>
    </>
  )
}

/** A class is opened by one press: it is named by its day until it is given another name. */
function Open({ sets: all, rosters: known }: { sets: readonly ClassSet[]; rosters: readonly Roster[] }) {
  const [title, setTitle] = useState(desk.openTitleOf(day(Date.now())))
  const [set, setSet] = useState(all[0]?.id ?? '')
  const [roster, setRoster] = useState('')
  const [pace, setPace] = useState<ClassPace>('led')
  const [rehearsal, setRehearsal] = useState(false)
  const { failed, doing, run } = useDoing()
  const open = async () => {
    const { class: opened } = await openClass({ title: title.trim(), set, pace, rehearsal, ...(roster && { roster }) })
    go(`/board/${opened.id}`)
  }
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault()
        void run(open, title.trim() === '' && desk.titleMissing)
      }}
    >
      <TextField label={desk.openTitle} value={title} set={setTitle} most={80} hint={desk.openTitleHint} />
      <div class="planned-fields">
        <Pick label={desk.openSet} value={set} set={setSet} choices={all.map((one) => ({ value: one.id, name: one.title }))} />
        <Pick
          label={desk.openRoster}
          value={roster}
          set={setRoster}
          choices={[{ value: '', name: desk.openNoRoster }, ...known.map((one) => ({ value: one.id, name: one.title }))]}
        />
      </div>
      <Pick<ClassPace>
        label={desk.openPace}
        value={pace}
        set={setPace}
        choices={[
          { value: 'led', name: desk.openLed },
          { value: 'self', name: desk.openSelf },
        ]}
      />
      <label class="desk-check">
        <input type="checkbox" checked={rehearsal} onChange={(event) => setRehearsal(event.currentTarget.checked)} />
        <span>{desk.openRehearsal}</span>
      </label>
      {failed && <p role="alert">{failed}</p>}
      <Button look="main" wide submit disabled={doing}>
        {desk.openNow}
      </Button>
    </form>
  )
}
