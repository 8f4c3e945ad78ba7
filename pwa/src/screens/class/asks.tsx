import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { useFocusIfLost } from '../../ui/focus'
import { drill } from '../../words/drill'
import type { Ask, Item, Reply } from '../../wire.gen'
import { AskControl } from '../drill/ask-control'
import { askName, spellReply } from '../drill/spell-reply'
import type { Answering } from './answering'

/** The questions of a scene: the first unanswered one is open; at the end all are shown before they are committed. */
export function Asks({ item, answering }: { item: Item; answering: Answering }) {
  const { asks } = item.question
  const { replies } = answering
  const [reopened, reopen] = useState<Ask>()
  const ask = reopened ?? asks.find(({ id }) => !replies.some((one) => one.ask === id))
  const heading = useFocusIfLost<HTMLHeadingElement>(ask?.id)
  if (!ask) return <Review item={item} answering={answering} reopen={reopen} />
  return (
    <section class="stack" aria-label={drill.ask}>
      <h2 class="ask-text" ref={heading} tabIndex={-1}>
        {asks.length > 1 && <small class="soft">{drill.progress(asks.indexOf(ask) + 1, asks.length)}</small>} {ask.text}
      </h2>
      <OneAsk
        key={ask.id}
        item={item}
        ask={ask}
        given={replies.find((one) => one.ask === ask.id)}
        done={(reply) => {
          answering.reply(reply)
          reopen(undefined)
        }}
      />
    </section>
  )
}

interface OneAskProps {
  item: Item
  ask: Ask
  given: Reply | undefined
  done(reply: Reply): void
}

/** A tap answers at once; the neutral plane waits for a press, as it is set by dragging. */
function OneAsk({ item, ask, given, done }: OneAskProps) {
  const [held, hold] = useState(given)
  const dragged = ask.kind === 'plane'
  const answer = (next: Reply) => {
    hold(next)
    if (!dragged || next.unsure) done(next)
  }
  return (
    <>
      <AskControl ask={ask} show={item.show} given={held} answer={answer} />
      {dragged && (
        <Button look="main" wide disabled={held?.plane === undefined} onClick={() => held && done(held)}>
          {drill.setIt}
        </Button>
      )}
    </>
  )
}

function Review({ item, answering, reopen }: { item: Item; answering: Answering; reopen(ask: Ask): void }) {
  const { asks } = item.question
  const heading = useFocusIfLost<HTMLHeadingElement>('review')
  const asksConfidence = item.kind === 'call_stage'
  const ready = !asksConfidence || answering.confidence !== undefined
  return (
    <section class="stack" aria-label={drill.review}>
      <h2 ref={heading} tabIndex={-1}>
        {drill.review}
      </h2>
      <ul class="review">
        {asks.map((ask) => (
          <li key={ask.id}>
            <span class="soft">{askName(ask, asks)}</span>
            <strong>{spellReply(ask, answering.replies.find((one) => one.ask === ask.id)!)}</strong>
            {ask.kind !== 'moment' && (
              <Button look="quiet" onClick={() => reopen(ask)} aria-label={drill.changeOf(askName(ask, asks))}>
                {drill.change}
              </Button>
            )}
          </li>
        ))}
      </ul>
      {asksConfidence && <Confidence answering={answering} />}
      {answering.failed && <p role="alert">{drill.notKept}</p>}
      <Button look="main" wide disabled={!ready || answering.committing} onClick={() => void answering.commit()}>
        {answering.committing ? drill.committing : drill.commit}
      </Button>
    </section>
  )
}

function Confidence({ answering }: { answering: Answering }) {
  const choices = Object.entries(drill.sure)
    .map(([value, name]) => ({ value: Number(value), name: `${name} (${Math.round(Number(value) * 100)} %)` }))
    .toSorted((a, b) => a.value - b.value)
  return (
    <>
      <h3 class="label">{drill.confidence}</h3>
      <Choices label={drill.confidence} choices={choices} chosen={answering.confidence} choose={answering.beSure} />
    </>
  )
}
