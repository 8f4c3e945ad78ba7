import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { useFocusIfLost } from '../../ui/focus'
import { drill } from '../../words/drill'
import type { Ask, Item, Reply } from '../../wire.gen'
import { AskControl } from './ask-control'
import { Review } from './review'
import { reply, set } from './state'

/** The questions: the first unanswered one is open; at the end all are shown before they are committed. */
export function Asks({ item }: { item: Item }) {
  const { asks } = item.question
  const replies = set.value?.replies ?? []
  const [reopened, setReopened] = useState<Ask>()
  const ask = reopened ?? asks.find(({ id }) => !replies.some((one) => one.ask === id))
  const heading = useFocusIfLost<HTMLHeadingElement>(ask?.id)
  if (!ask) return <Review item={item} reopen={setReopened} />
  const given = replies.find((one) => one.ask === ask.id)
  return (
    <section class="stack" aria-label={drill.ask}>
      <h2 class="ask-text" ref={heading} tabIndex={-1}>
        {asks.length > 1 && <small class="soft">{drill.progress(asks.indexOf(ask) + 1, asks.length)}</small>} {ask.text}
      </h2>
      <Answering key={ask.id} item={item} ask={ask} given={given} done={() => setReopened(undefined)} />
    </section>
  )
}

interface AnsweringProps {
  item: Item
  ask: Ask
  given: Reply | undefined
  done(): void
}

/** A tap answers at once; the neutral plane waits for a press, as it is set by dragging. */
function Answering({ item, ask, given, done }: AnsweringProps) {
  const [held, setHeld] = useState(given)
  const dragged = ask.kind === 'plane'
  return (
    <>
      <AskControl
        ask={ask}
        show={item.show}
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
