import type { ComponentChildren } from 'preact'
import { Button } from '../../ui/button'
import { useFocusIfLost } from '../../ui/focus'
import { drill } from '../../words/drill'
import type { Ask, Item, Reply } from '../../wire.gen'
import { asksConfidence, type Answering } from './answering'
import { Confidence } from './confidence'
import { askName, spellReply } from '../../words/spell-reply'

interface Props {
  item: Item
  answering: Answering
  reopen(ask: Ask): void
  trouble: ComponentChildren
}

/** All answers before they are committed; each can still be changed. */
export function Review({ item, answering, reopen, trouble }: Props) {
  const { asks } = item.question
  const sure = asksConfidence(item, answering.replies)
  const heading = useFocusIfLost<HTMLHeadingElement>('review')
  const ready = !sure || answering.confidence !== undefined
  return (
    <section class="stack" aria-label={drill.review}>
      <h2 ref={heading} tabIndex={-1}>
        {drill.review}
      </h2>
      <ul class="review">
        {asks.map((ask) => (
          <Given key={ask.id} ask={ask} asks={asks} reply={answering.replies.find((one) => one.ask === ask.id)} reopen={reopen} />
        ))}
      </ul>
      {sure && <Confidence item={item} chosen={answering.confidence} choose={answering.beSure} />}
      {trouble}
      <Button look="main" wide disabled={!ready || answering.committing} onClick={() => void answering.commit()}>
        {answering.committing ? drill.committing : drill.commit}
      </Button>
    </section>
  )
}

/** A moment that was called out has passed: there is no changing it. */
function Given({ ask, asks, reply, reopen }: { ask: Ask; asks: readonly Ask[]; reply: Reply | undefined; reopen(ask: Ask): void }) {
  const name = askName(ask, asks)
  return (
    <li>
      <span class="soft">{name}</span>
      <strong>{reply && spellReply(ask, reply)}</strong>
      {ask.kind !== 'moment' && (
        <Button look="quiet" onClick={() => reopen(ask)} aria-label={drill.changeOf(name)}>
          {drill.change}
        </Button>
      )}
    </li>
  )
}
