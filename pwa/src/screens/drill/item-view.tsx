import { useEffect, useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { useFocusIfLost } from '../../ui/focus'
import { drill } from '../../words/en/drill'
import type { Ask, Item } from '../../wire.gen'
import { AskControl } from './ask-control'
import { useFire } from './fire'
import { SceneView } from './scene-view'
import { askName, spellReply } from './spell-reply'
import { beSure, commit, failed, phase, reply, seen, set } from './state'

/** A scene and its questions, one at a time, until they are committed. */
export function ItemView({ item }: { item: Item }) {
  const { fire, failed: unlit } = useFire(item.scenario, item.moment_s)
  useEffect(() => {
    if (fire) seen()
  }, [fire])
  if (unlit) return <p role="alert">{drill.failed}</p>
  return (
    <div class="item item-asking">
      <p class="item-question">{item.question.text}</p>
      <SceneView item={item} fire={fire} />
      {fire && <Asks item={item} />}
    </div>
  )
}

/** The questions: the first unanswered one is open; at the end all are shown before they are committed. */
function Asks({ item }: { item: Item }) {
  const { asks } = item.question
  const replies = set.value?.replies ?? []
  const unanswered = asks.findIndex(({ id }) => !replies.some(({ ask }) => ask === id))
  const [reopened, setReopened] = useState<Ask>()
  const ask = reopened ?? asks[unanswered]
  const heading = useFocusIfLost<HTMLHeadingElement>(ask?.id)
  if (!ask) return <Review item={item} reopen={setReopened} />
  const given = replies.find((one) => one.ask === ask.id)
  return (
    <section class="stack" aria-label={drill.ask}>
      <h2 class="ask-text" ref={heading} tabIndex={-1}>
        <small class="soft">{drill.progress(asks.indexOf(ask) + 1, asks.length)}</small> {ask.text}
      </h2>
      <Answering key={ask.id} ask={ask} given={given} done={() => setReopened(undefined)} />
    </section>
  )
}

/** A tap answers at once; the neutral plane waits for a press, as it is set by dragging. */
function Answering({ ask, given, done }: { ask: Ask; given: ReturnType<typeof replyOf>; done(): void }) {
  const [held, setHeld] = useState(given)
  const dragged = ask.kind === 'plane'
  return (
    <>
      <AskControl
        ask={ask}
        given={held}
        answer={(next) => {
          setHeld(next)
          if (dragged && !next.unsure) return
          reply(next)
          done()
        }}
      />
      {dragged && (
        <Button look="main" wide disabled={held?.plane === undefined} onClick={() => held && (reply(held), done())}>
          {drill.setIt}
        </Button>
      )}
    </>
  )
}

function Review({ item, reopen }: { item: Item; reopen(ask: Ask): void }) {
  const asksConfidence = item.kind === 'call_stage'
  const heading = useFocusIfLost<HTMLHeadingElement>('review')
  const ready = !asksConfidence || set.value?.confidence !== undefined
  return (
    <section class="stack" aria-label={drill.review}>
      <h2 ref={heading} tabIndex={-1}>
        {drill.review}
      </h2>
      <ul class="review">
        {item.question.asks.map((ask) => (
          <li key={ask.id}>
            <span class="soft">{askName(ask, item.question.asks)}</span>
            <strong>{spellReply(ask, replyOf(ask.id)!)}</strong>
            <Button look="quiet" onClick={() => reopen(ask)} aria-label={`${drill.change}: ${askName(ask, item.question.asks)}`}>
              {drill.change}
            </Button>
          </li>
        ))}
      </ul>
      {asksConfidence && <Confidence />}
      {failed.value && <p role="alert">{drill.notKept}</p>}
      <Button look="main" wide disabled={!ready || phase.value === 'committing'} onClick={() => void commit()}>
        {phase.value === 'committing' ? drill.committing : drill.commit}
      </Button>
    </section>
  )
}

function replyOf(id: string) {
  return set.value?.replies.find(({ ask }) => ask === id)
}

function Confidence() {
  const choices = Object.entries(drill.sure)
    .map(([value, name]) => ({ value: Number(value), name: `${name} (${Math.round(Number(value) * 100)} %)` }))
    .toSorted((a, b) => a.value - b.value)
  return (
    <>
      <h3 class="label">{drill.confidence}</h3>
      <Choices label={drill.confidence} choices={choices} chosen={set.value?.confidence} choose={beSure} />
    </>
  )
}
