import type { ComponentChildren } from 'preact'
import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { useFocusIfLost } from '../../ui/focus'
import { useTap } from '../../ui/tap'
import { drill } from '../../words/drill'
import type { Ask, Item, Reply } from '../../wire.gen'
import { AskControl } from './ask-control'
import type { Answering } from './answering'
import { Review } from './review'

interface Props {
  item: Item
  answering: Answering
  /** What stands in the way of keeping the answer, where something does. */
  trouble: ComponentChildren
}

/** The questions: the first unanswered one is open; at the end all are shown before they are committed. */
export function Asks({ item, answering, trouble }: Props) {
  const { asks } = item.question
  const { replies } = answering
  const [reopened, reopen] = useState<Ask>()
  const ask = reopened ?? asks.find(({ id }) => !replies.some((one) => one.ask === id))
  const heading = useFocusIfLost<HTMLHeadingElement>(ask?.id)
  if (!ask) return <Review item={item} answering={answering} reopen={reopen} trouble={trouble} />
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
  const { felt, tap } = useTap(done)
  const dragged = ask.kind === 'plane'
  const answer = (next: Reply) => {
    if (felt) return
    hold(next)
    if (!dragged || next.unsure) tap(next)
  }
  return (
    <>
      <AskControl ask={ask} show={item.show} given={held} answer={answer} />
      {dragged && (
        <Button look="main" wide disabled={held?.plane === undefined || felt} onClick={() => held && tap(held)}>
          {drill.setIt}
        </Button>
      )}
    </>
  )
}
