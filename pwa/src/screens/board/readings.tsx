import { useState } from 'preact/hooks'
import { Spread } from '../../class/spread'
import { replyOf } from '../../class/stops'
import { board } from '../../words/class-board'
import { classes } from '../../words/class'
import { drill } from '../../words/drill'
import { lowerFirst } from '../../words/sentence'
import { trade } from '../../words/trade'
import type { Ask, ClassApart, ClassAskSpread, ClassBoardScene, ClassBoardView, ClassStep, Cue } from '../../wire.gen'
import { askName, spellReply } from '../../words/spell-reply'
import type { DeskProps } from './desk-props'
import { Key } from './key'
import type { Lead } from './lead'
import { PickScene } from './pick-scene'
import '../drill/drill.css'

/** While readings come in, what went wrong before is not in their way. */
const busy = new Set<ClassStep>(['watch', 'commit'])

/** How a scene was read: the one that everybody is at, or another one that is chosen. */
export function Readings({ view, lead }: DeskProps) {
  const [chosen, choose] = useState<string>()
  const at = chosen ?? openAt(view)
  const scene = view.scenes.find(({ id }) => id === at)
  return (
    <section class="stack" aria-label={board.readings}>
      {!busy.has(view.step) && <SoFar view={view} lead={lead} />}
      <PickScene label={board.readingsOf} scenes={view.scenes} at={at} choose={choose} />
      {scene && <OneScene view={view} scene={scene} lead={lead} />}
    </section>
  )
}

/** The scene that everybody is at; after the end the last that was read. */
function openAt({ step, scene, scenes }: ClassBoardView): string | undefined {
  const read = step === 'ended' ? scenes.findLast(({ spread }) => spread) : scene
  return (read ?? scenes[0])?.id
}

/** What went wrong so far over the whole class, and which scene to take next for it. */
function SoFar({ view: { misread, suggest, step }, lead }: { view: ClassBoardView; lead: Lead }) {
  if (!misread) return null
  return (
    <div class="board-far stack">
      <p>{board.misread(cueName(misread.cue), misread.right, misread.judged, misread.way)}</p>
      {suggest && step !== 'ended' && (
        <div class="row spread">
          <span>{board.suggest(suggest.title, lowerFirst(cueName(suggest.cue)))}</span>
          <AddButton lead={lead} suggest={suggest} />
        </div>
      )}
    </div>
  )
}

function AddButton({ lead, suggest }: { lead: Lead; suggest: NonNullable<ClassBoardView['suggest']> }) {
  const planned = { family: suggest.family, seed: suggest.seed, look_s: 0, note: '' }
  return (
    <button type="button" class="button button-plain" onClick={() => void lead.do({ kind: 'scene_added', planned })}>
      {board.suggestAdd}
    </button>
  )
}

/** What is asked about no single cue goes by a name of its own. */
const asked: Record<string, string> = { stage: trade.stage, regime: trade.regime, change: drill.kinds.predict_move, ...drill.subjects }

/** The name of a cue, or of what else is asked. */
export const cueName = (cue: string): string => asked[cue] ?? trade.cues[cue as Cue] ?? cue

function OneScene({ view, scene, lead }: { view: ClassBoardView; scene: ClassBoardScene; lead: Lead }) {
  if (!scene.spread) return <p class="soft">{board.noReadings}</p>
  const asks = scene.spread.asks.map(({ ask }) => ask)
  return (
    <>
      {!scene.revealed && <p class="small soft">{board.privateTruth}</p>}
      <ul class="parts">
        {scene.spread.asks.map((said) => (
          <OneAsk key={said.ask.id} said={said} asks={asks} view={view} scene={scene} lead={lead} />
        ))}
      </ul>
    </>
  )
}

interface OneAskProps {
  said: ClassAskSpread
  asks: readonly Ask[]
  view: ClassBoardView
  scene: ClassBoardScene
  lead: Lead
}

function OneAsk({ said, asks, view, scene, lead }: OneAskProps) {
  const name = askName(said.ask, asks)
  return (
    <li class="part stack board-ask">
      <div class="row spread">
        <h2 class="part-name">{name}</h2>
        <span class="small">
          {board.right(said.right, said.judged)}
          {scene.spread?.worst === said.ask.id && `, ${board.worst}`}
        </span>
      </div>
      <Spread said={said} name={name} />
      <div class="row spread board-foot">
        <p class="small">{said.apart && spellApart(said.ask, said.apart, view)}</p>
        <Key scene={scene} ask={said.ask.id} lead={lead} />
      </div>
    </li>
  )
}

/** Who said what, of the two readings that lie furthest apart. */
function spellApart(ask: Ask, { low, high, low_by = [], high_by = [], low_n, high_n }: ClassApart, view: ClassBoardView): string {
  const spell = (value: string) => spellReply(ask, replyOf(ask, value))
  return board.apart(spell(low), who(low_by, low_n, view), spell(high), who(high_by, high_n, view))
}

const mostNamed = 3 // call signs in one line; chosen by us

function who(persons: readonly number[], n: number, { people }: ClassBoardView): string {
  const names = persons.slice(0, mostNamed).map((number) => people.find(({ person }) => person === number)?.call_sign ?? classes.nobody)
  const more = n - names.length
  return more > 0 ? board.whoAndMore(names.join(', '), more) : names.join(', ')
}
