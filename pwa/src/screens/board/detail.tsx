import { useEffect, useState } from 'preact/hooks'
import { person as ask } from '../../class/desk'
import { say } from '../../class/say'
import { Button } from '../../ui/button'
import { TextField } from '../../ui/text-field'
import { board } from '../../words/class-board'
import { drill } from '../../words/drill'
import type { Ask, ClassBoardPerson, ClassBoardView, ClassPersonAnswer, ClassPersonReport, Reply } from '../../wire.gen'
import { askName, spellReply, spellTruth } from '../../words/spell-reply'
import type { Lead } from './lead'

interface DetailProps {
  person: ClassBoardPerson
  view: ClassBoardView
  lead: Lead
}

/** What one person committed, with the truth beside it: for the instructor alone. */
export function Detail({ person, view, lead }: DetailProps) {
  const [told, setTold] = useState<ClassPersonReport>()
  const [failed, setFailed] = useState<string>()
  useEffect(() => {
    ask(lead.id, person.person, lead.key).then(
      ({ person: all }) => setTold(all),
      (error: unknown) => setFailed(say(error)),
    )
  }, [person.committed.length])
  return (
    <div class="stack">
      {failed && <p role="alert">{failed}</p>}
      {person.score !== null && <p>{board.agreement(Math.round(person.score * 100))}</p>}
      {told?.sure && <p>{board.sure(Math.round(told.sure.said * 100), Math.round(told.sure.right * 100), told.sure.n)}</p>}
      {person.late > 0 && <p class="small">{board.late(person.late)}</p>}
      {told?.answers.length === 0 && <p class="soft">{board.detailNone}</p>}
      {told?.answers.map((answer) => (
        <OneAnswer key={answer.scene} answer={answer} view={view} />
      ))}
      {view.step !== 'ended' && <Change person={person} lead={lead} />}
    </div>
  )
}

function OneAnswer({ answer, view }: { answer: ClassPersonAnswer; view: ClassBoardView }) {
  const scene = view.scenes.find(({ id }) => id === answer.scene)
  const asks = scene?.spread?.asks.map((said) => said.ask) ?? []
  return (
    <section>
      <h3>{scene && board.numbered(scene.number, scene.title)}</h3>
      <dl class="given">
        {answer.parts.map((part) => {
          const asked = asks.find(({ id }) => id === part.ask)
          if (!asked) return null
          return (
            <div key={part.ask}>
              <dt class="soft">{askName(asked, asks)}</dt>
              <dd>{spellReply(asked, part.given)}</dd>
              <dd class="small">
                {part.right ? drill.right : spellWas(asked, part.truth)}
              </dd>
            </div>
          )
        })}
      </dl>
    </section>
  )
}

/** What was so; a moment is told in sentences of its own. */
function spellWas(asked: Ask, truth: readonly Reply[]): string {
  const said = truth.map((reply) => spellTruth(asked, reply)).join(` ${drill.or} `)
  return asked.kind === 'moment' ? said : board.itWas(said)
}

function Change({ person, lead }: Omit<DetailProps, 'view'>) {
  const [callSign, setCallSign] = useState(person.call_sign)
  const name = callSign.trim()
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault()
        void lead.do({ kind: 'renamed', person: person.person, call_sign: name })
      }}
    >
      <TextField label={board.rename} value={callSign} set={setCallSign} most={32} />
      <div class="row">
        <Button submit disabled={name === '' || name === person.call_sign}>
          {board.renameNow}
        </Button>
        <Button look="quiet" onClick={() => void lead.do({ kind: 'removed', person: person.person, on: !person.removed })}>
          {person.removed ? board.restore : board.remove}
        </Button>
      </div>
    </form>
  )
}
