import { useEffect, useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { useFocusIfLost } from '../../ui/focus'
import { drill } from '../../words/en/drill'
import { sourceName } from '../../words/sources'
import type { Item, Verdict } from '../../wire.gen'
import { useFire, type Fire } from './fire'
import { PartView } from './part-view'
import { SceneView } from './scene-view'
import { openScene, set } from './state'

/** After the commit: your answer over the truth, the wall drawn away, why, and the rule with its source. */
export function Reveal({ item, verdict }: { item: Item; verdict: Verdict }) {
  const [turn, setTurn] = useState(0)
  const { fire } = useFire(item.scenario, item.moment_s, turn)
  const [cutaway, setCutaway] = useState(true)
  const committed = useFocusIfLost<HTMLParagraphElement>('reveal')
  const last = set.value && set.value.done.length === set.value.scenes.length
  return (
    <div class="item">
      <div class="stack">
        <p class="committed" role="status" ref={committed} tabIndex={-1}>
          <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
            <path d="M3 11l5 5L17 4" fill="none" stroke="currentColor" stroke-width="2.5" />
          </svg>
          {drill.committed}
        </p>
        <SceneView item={item} fire={fire} cutaway={cutaway} />
        <div class="row">
          <Button onClick={() => setCutaway(!cutaway)}>{cutaway ? drill.wallBack : drill.wallAway}</Button>
          {item.question.move && fire && <Watch key={turn} item={item} fire={fire} again={() => setTurn(turn + 1)} />}
        </div>
      </div>
      <div class="stack stack-wide">
        <ul class="parts">
          {verdict.parts.map((part) => (
            <PartView key={part.ask} item={item} part={part} />
          ))}
        </ul>
        <Explained verdict={verdict} />
        <Button look="main" wide onClick={() => void openScene()}>
          {last ? drill.finish : drill.next}
        </Button>
      </div>
    </div>
  )
}

export function Explained({ verdict }: { verdict: Verdict }) {
  const said = [
    [drill.why, verdict.why],
    [drill.tell, verdict.tell],
    [drill.rule, verdict.rule],
  ] as const
  return (
    <dl class="explained">
      {said.map(([name, text]) => (
        <div key={name}>
          <dt class="label">{name}</dt>
          <dd>{text}</dd>
        </div>
      ))}
      <div>
        <dt class="label">{drill.source}</dt>
        <dd class="small soft">{sourceName(verdict.source)}</dd>
      </div>
    </dl>
  )
}

// The move is watched this much faster than it happens, for so long, in small
// steps. Chosen by us: long enough for a room's layer to answer.
const faster = 5
const watchS = 120
const stepS = 0.5

/** Makes the predicted move and lets the fire run on. */
function Watch({ item, fire, again }: { item: Item; fire: Fire; again(): void }) {
  const [since, setSince] = useState<number>()
  useEffect(() => {
    if (since === undefined || since >= watchS) return undefined
    const timer = setTimeout(() => {
      void fire.advance(stepS).then(() => setSince(since + stepS))
    }, (1000 * stepS) / faster)
    return () => clearTimeout(timer)
  }, [fire, since])

  const start = () => void fire.move({ ...item.question.move!, t_s: 0 }).then(() => setSince(0))
  if (since === undefined) return <Button onClick={start}>{drill.watch}</Button>
  return (
    <>
      {since >= watchS && <Button onClick={again}>{drill.again}</Button>}
      <span class="small" role="timer">
        {drill.watching(Math.round(since))}
      </span>
    </>
  )
}
