import { go } from '../../app/router'
import { report as ask, reportCsv, reportPdf, saveSet } from '../../class/desk'
import { Spread } from '../../class/spread'
import { saveFile } from '../../local/save-file'
import { Button } from '../../ui/button'
import { Page } from '../../ui/page'
import { board } from '../../words/class-board'
import { desk } from '../../words/class-desk'
import { language } from '../../words/language'
import { decimalPoint } from '../../words/number'
import { lowerFirst } from '../../words/sentence'
import type { ClassBoardScene, ClassPersonReport, ClassReport } from '../../wire.gen'
import { cueName } from '../board/readings'
import { askName } from '../../words/spell-reply'
import { date } from './classes'
import { useDoing, useLoaded } from './use-loaded'
import '../drill/drill.css'

/** What is kept of a class: how each cue and scene was read, what to repeat, and everyone's own line. */
export function Report({ id }: { id: string }) {
  const { value, failed } = useLoaded(() => ask(id))
  const told = value?.report
  return (
    <Page title={told ? desk.reportOf(told.title) : desk.report} wide aside={<Downloads id={id} atMS={told?.opened_ms ?? Date.now()} />}>
      {failed && <p role="alert">{failed}</p>}
      {!told && !failed && <p role="status">{desk.looking}</p>}
      {told && <Told told={told} />}
    </Page>
  )
}

function Downloads({ id, atMS }: { id: string; atMS: number }) {
  const { failed, doing, run } = useDoing()
  const east = -new Date(atMS).getTimezoneOffset()
  const pdf = async () => saveFile('class.pdf', await reportPdf(id, { language, point: decimalPoint, eastMin: east }))
  const csv = async () => saveFile('class.csv', await reportCsv(id, language))
  return (
    <div class="row no-print">
      {failed && <p role="alert">{failed}</p>}
      <Button disabled={doing} onClick={() => void run(pdf)}>
        {desk.savePdf}
      </Button>
      <Button disabled={doing} onClick={() => void run(csv)}>
        {desk.saveCsv}
      </Button>
      <a class="button button-plain" href={`/instructor/class/${id}/sheets`}>
        {desk.sheets}
      </a>
      <a class="button button-quiet" href={`/board/${id}`}>
        {desk.toBoard}
      </a>
    </div>
  )
}

function Told({ told }: { told: ClassReport }) {
  return (
    <div class="report stack stack-wide">
      <p class="soft">{desk.reportDate(date(told.opened_ms), desk.people(told.people.length))}</p>
      <div class="desk-two">
        <Cues told={told} />
        <Repeat told={told} />
      </div>
      <section class="stack">
        <h2>{desk.perScene}</h2>
        {told.scenes.map((scene) => (
          <OneScene key={scene.id} scene={scene} />
        ))}
      </section>
      <section class="stack">
        <h2>{desk.perPerson}</h2>
        <p class="small soft">{desk.perPersonWhy}</p>
        <ul class="desk-list report-people">
          {told.people.map((one) => (
            <li key={one.person}>
              <strong>{one.call_sign}</strong>
              <span>{spellPerson(one, told.scenes.length)}</span>
            </li>
          ))}
        </ul>
      </section>
    </div>
  )
}

function spellPerson({ committed, score }: ClassPersonReport, of: number): string {
  return score === null ? desk.personNone(of) : desk.personLine(committed.length, of, Math.round(score * 100))
}

function Cues({ told }: { told: ClassReport }) {
  return (
    <section class="stack">
      <h2>{desk.perCue}</h2>
      <ul class="cue-bars">
        {told.cues.map(({ cue, right, judged, way }) => (
          <li key={cue}>
            <strong>{cueName(cue)}</strong>
            <span class="small">
              {[desk.cueLine(right, judged), way !== 'mixed' && desk.cueWays[way]].filter(Boolean).join(', ')}
            </span>
            <svg viewBox="0 0 100 4" preserveAspectRatio="none" aria-hidden="true">
              <path d="M0 2h100" class="cue-bar-all" />
              <path d={`M0 2h${(100 * right) / Math.max(1, judged)}`} class="cue-bar-right" />
            </svg>
          </li>
        ))}
      </ul>
    </section>
  )
}

function Repeat({ told }: { told: ClassReport }) {
  const { failed, doing, run } = useDoing()
  const make = async () => {
    const scenes = told.repeat.map(({ family, seed }) => ({ family, seed, look_s: 0, note: '' }))
    const { set } = await saveSet(undefined, desk.repeatSet(told.title).slice(0, 80), scenes)
    go(`/instructor/sets/${set.id}`)
  }
  return (
    <section class="stack">
      <h2>{desk.repeat}</h2>
      {told.repeat.length === 0 && <p>{desk.repeatNone}</p>}
      <ul class="desk-list">
        {told.repeat.map(({ family, seed, title, cue }) => (
          <li key={`${family} ${seed}`}>{desk.repeatLine(title, lowerFirst(cueName(cue)))}</li>
        ))}
      </ul>
      {failed && <p role="alert">{failed}</p>}
      {told.repeat.length > 0 && (
        <div class="no-print">
          <Button disabled={doing} onClick={() => void run(make)}>
            {desk.repeatMake}
          </Button>
        </div>
      )}
    </section>
  )
}

function OneScene({ scene }: { scene: ClassBoardScene }) {
  const { spread } = scene
  const asks = spread?.asks.map(({ ask: asked }) => asked) ?? []
  return (
    <article class="report-scene stack">
      <h3>{board.numbered(scene.number, scene.title)}</h3>
      {spread ? <p class="small soft">{desk.marks(spread.marks, spread.late, spread.sheets)}</p> : <p class="soft">{board.detailNone}</p>}
      {scene.doubts.map(({ ask: asked, by, note }) => (
        <p key={asked}>{board.disagreed(by, note)}</p>
      ))}
      <div class="report-asks">
        {spread?.asks.map((said) => (
          <section key={said.ask.id} class="stack">
            <div class="row spread">
              <h4>{askName(said.ask, asks)}</h4>
              <span class="small">{board.right(said.right, said.judged)}</span>
            </div>
            <Spread said={said} name={askName(said.ask, asks)} />
          </section>
        ))}
      </div>
    </article>
  )
}
