import { Choices } from '../../ui/choices'
import { Flows } from '../../ui/flow'
import { cannotTell, Levels } from '../../ui/levels'
import { Plane } from '../../ui/plane'
import { trade } from '../../words/en/trade'
import type { OrdinalCue } from '../../words/scales'
import { QUIZ_CHANGE_WORDS, REGIME_WORDS, STAGE_WORDS, type Ask, type Reply } from '../../wire.gen'

interface AskControlProps {
  ask: Ask
  given: Reply | undefined
  answer(reply: Reply): void
}
import { changeWords } from './spell-reply'

const unsure = 'cannot_tell'

/** The control that fits a question. */
export function AskControl({ ask, given, answer }: AskControlProps) {
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
      return <Named ask={ask} given={given} say={say} />
  }
}

/** Stage, regime and change: a list of words. */
function Named({ ask, given, say }: { ask: Ask; given: Reply | undefined; say(said: Omit<Reply, 'ask'>): void }) {
  const choices = [...namesOf(ask), { value: unsure, name: trade.cannotTell }]
  const field = ask.kind as 'stage' | 'regime' | 'change'
  return (
    <Choices<string>
      label={ask.text}
      columns={ask.kind === 'stage' ? 2 : 1}
      choices={choices}
      chosen={given?.unsure ? unsure : given?.[field]}
      choose={(chosen) => say(chosen === unsure ? { unsure: true } : { [field]: chosen })}
    />
  )
}

function namesOf(ask: Ask): { value: string; name: string }[] {
  switch (ask.kind) {
    case 'stage':
      return STAGE_WORDS.filter((stage) => stage !== 'undetermined').map((value) => ({ value, name: trade.stages[value] }))
    case 'regime':
      return REGIME_WORDS.map((value) => ({ value, name: trade.regimes[value] }))
    default:
      return QUIZ_CHANGE_WORDS.map((value) => ({ value, name: changeWords(ask)[value] }))
  }
}
