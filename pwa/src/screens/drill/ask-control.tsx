import { Choices } from '../../ui/choices'
import { Flows } from '../../ui/flow'
import { cannotTell, Levels } from '../../ui/levels'
import { Plane } from '../../ui/plane'
import { trade } from '../../words/trade'
import type { OrdinalCue } from '../../words/scales'
import { spoken } from '../../render'
import { drill } from '../../words/drill'
import { PICK_WORDS, QUIZ_CHANGE_WORDS, REGIME_WORDS, STAGE_WORDS, TREND_WORDS, type Ask, type Reply } from '../../wire.gen'
import { changeWords } from '../../words/spell-reply'

interface AskControlProps {
  ask: Ask
  /** The openings one may name. */
  show?: readonly string[]
  given: Reply | undefined
  answer(reply: Reply): void
}

const unsure = 'cannot_tell'

/** The control that fits a question. */
export function AskControl({ ask, show = [], given, answer }: AskControlProps) {
  const say = (said: Omit<Reply, 'ask'>) => answer({ ask: ask.id, ...said })
  switch (ask.kind) {
    case 'level':
      return (
        <Levels
          cue={ask.cue as OrdinalCue}
          chosen={given?.unsure ? cannotTell : given?.level}
          choose={(level) => say(level === cannotTell ? { unsure: true } : { level })}
        />
      )
    case 'flow':
      return (
        <Flows
          chosen={given?.unsure ? unsure : given?.flow}
          choose={(flow) => say(flow === unsure ? { unsure: true } : { flow })}
        />
      )
    case 'plane':
      return (
        <Plane
          chosen={given?.unsure ? null : given?.plane}
          choose={(plane) => say(plane === null ? { unsure: true } : { plane })}
        />
      )
    default:
      return <Named ask={ask} show={show} given={given} say={say} />
  }
}

interface NamedProps {
  ask: Ask
  show: readonly string[]
  given: Reply | undefined
  say(said: Omit<Reply, 'ask'>): void
}

/** Everything that is answered by one of a few names. */
function Named({ ask, show, given, say }: NamedProps) {
  const choices = [...namesOf(ask, show), { value: unsure, name: trade.cannotTell }]
  const field = ask.kind as 'stage' | 'regime' | 'change' | 'opening' | 'trend' | 'pick'
  return (
    <Choices<string>
      label={ask.text}
      columns={columnsOf(ask, choices.length)}
      choices={choices}
      chosen={given?.unsure ? unsure : given?.[field]}
      choose={(chosen) => say(chosen === unsure ? { unsure: true } : { [field]: chosen })}
    />
  )
}

/** Long names stand in one or two columns, short ones beside each other. */
function columnsOf({ kind }: Ask, count: number): 1 | 2 {
  return kind === 'stage' || kind === 'trend' || kind === 'pick' || (kind === 'opening' && count > 4) ? 2 : 1
}

function namesOf(ask: Ask, show: readonly string[]): { value: string; name: string }[] {
  switch (ask.kind) {
    case 'stage':
      return STAGE_WORDS.filter((stage) => stage !== 'undetermined').map((value) => ({ value, name: trade.stages[value] }))
    case 'regime':
      return REGIME_WORDS.map((value) => ({ value, name: trade.regimes[value] }))
    case 'opening':
      return show.map((value) => ({ value, name: spoken(value) }))
    case 'trend':
      return TREND_WORDS.map((value) => ({ value, name: drill.trends[value] }))
    case 'pick':
      return PICK_WORDS.map((value) => ({ value, name: drill.picks[value] }))
    default:
      return QUIZ_CHANGE_WORDS.map((value) => ({ value, name: changeWords(ask)[value] }))
  }
}
