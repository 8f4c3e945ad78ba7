import { useEffect, useState } from 'preact/hooks'
import { keeping, look } from '../../local/keeping'
import { engine } from '../../worker/client'
import { Button } from '../../ui/button'
import { Page } from '../../ui/page'
import { drill } from '../../words/drill'
import { judged } from './part-view'
import { askName } from '../../words/spell-reply'
import { begin, chosenSize, set, type Done } from './state'

/** The end of a set: every scene with how each answer compared. No total: so few say little of anyone. */
export function End() {
  const done = set.value?.done ?? []
  const [lessons, setLessons] = useState(new Map<string, string>())
  useEffect(() => {
    void look()
    void engine.families().then((all) => setLessons(new Map(all.map(({ id, lesson }) => [id, lesson]))))
  }, [])
  return (
    <Page title={set.value?.form ? drill.testDone : drill.doneTitle}>
      <div class="stack stack-wide">
        <ol class="ends">
          {done.map((one, n) => (
            <Scene key={n} done={one} lesson={lessons.get(one.item.family)} />
          ))}
        </ol>
        <Button look="main" wide onClick={() => void begin(set.value?.size ?? chosenSize.value)}>
          {drill.another}
        </Button>
        <a class="button" href="/log">
          {drill.toLog}
        </a>
        {keeping.value === 'may_erase' && (
          <p class="end-erase small soft">
            <a href="/log">{drill.mayErase}</a>
          </p>
        )}
      </div>
    </Page>
  )
}

function Scene({ done: { item, verdict }, lesson }: { done: Done; lesson: string | undefined }) {
  const right = verdict.parts.filter((part) => part.right).length
  return (
    <li class="stack">
      <h2>{item.title}</h2>
      <div class="row spread small">
        <span class="soft">{drill.asItWas(right, verdict.parts.length)}</span>
        {lesson && <a href={`/field-book/lesson/${lesson}`}>{drill.lesson}</a>}
      </div>
      <dl class="review">
        {verdict.parts.map((part) => {
          const ask = item.question.asks.find(({ id }) => id === part.ask)
          return (
            ask && (
              <div key={part.ask}>
                <dt class="soft">{askName(ask, item.question.asks)}</dt>
                <dd>{judged(ask, part)}</dd>
              </div>
            )
          )
        })}
      </dl>
    </li>
  )
}
