import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { useFocusIfLost } from '../../ui/focus'
import { drill } from '../../words/drill'
import type { Ask, Item } from '../../wire.gen'
import { askName, spellReply } from './spell-reply'
import { beSure, commit, goOnUnkept, phase, set, trouble } from './state'
import { exportEverything } from '../log/export'

/** All answers before they are committed; each can still be changed. */
export function Review({ item, reopen }: { item: Item; reopen(ask: Ask): void }) {
  const { asks } = item.question
  const asksConfidence = item.kind === 'call_stage'
  const heading = useFocusIfLost<HTMLHeadingElement>('review')
  const ready = !asksConfidence || set.value?.confidence !== undefined
  const committing = phase.value === 'committing'
  return (
    <section class="stack" aria-label={drill.review}>
      <h2 ref={heading} tabIndex={-1}>
        {drill.review}
      </h2>
      <ul class="review">
        {asks.map((ask) => (
          <Given key={ask.id} ask={ask} asks={asks} reopen={reopen} />
        ))}
      </ul>
      {asksConfidence && <Confidence />}
      {trouble.value && <Trouble />}
      <Button look="main" wide disabled={!ready || committing} onClick={() => void commit()}>
        {committing ? drill.committing : drill.commit}
      </Button>
    </section>
  )
}

/** A moment that was called out has passed: there is no changing it. */
function Given({ ask, asks, reopen }: { ask: Ask; asks: readonly Ask[]; reopen(ask: Ask): void }) {
  const given = set.value?.replies.find((one) => one.ask === ask.id)
  const name = askName(ask, asks)
  return (
    <li>
      <span class="soft">{name}</span>
      <strong>{given && spellReply(ask, given)}</strong>
      {ask.kind !== 'moment' && (
        <Button look="quiet" onClick={() => reopen(ask)} aria-label={drill.changeOf(name)}>
          {drill.change}
        </Button>
      )}
    </li>
  )
}

/** Said plainly, with what can be done; the drill goes on either way. */
function Trouble() {
  const full = trouble.value === 'full'
  return (
    <div class="stack trouble" role="alert">
      <p>{full ? drill.full : drill.notKept}</p>
      {full && (
        <div class="row">
          <Button onClick={() => void exportEverything()}>{drill.exportNow}</Button>
          <Button onClick={() => void goOnUnkept()}>{drill.goOnUnkept}</Button>
        </div>
      )}
    </div>
  )
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
