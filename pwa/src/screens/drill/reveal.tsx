import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { useFocusIfLost } from '../../ui/focus'
import { useTap } from '../../ui/tap'
import { drill } from '../../words/drill'
import { capital } from '../../words/sentence'
import type { Item, Verdict } from '../../wire.gen'
import { useFire } from './fire'
import { Futures } from './futures'
import { TwoLooks } from './looks'
import { PartView } from './part-view'
import { SceneView } from './scene-view'
import { openScene, set, trouble } from './state'
import { TwoScenes } from './two-scenes'

/** After the commit: your answer over the truth, the wall drawn away, why, and the rule with its source. */
export function Reveal({ item, verdict }: { item: Item; verdict: Verdict }) {
  const [cutaway, setCutaway] = useState(true)
  const committed = useFocusIfLost<HTMLParagraphElement>('reveal')
  const onward = useTap(() => void openScene())
  const last = set.value && set.value.done.length === set.value.scenes.length
  return (
    <div class="item">
      <div class="stack">
        <p class="committed" role="status" ref={committed} tabIndex={-1}>
          {trouble.value ? (
            drill.uncommitted
          ) : (
            <>
              <svg width="20" height="20" viewBox="0 0 20 20" aria-hidden="true">
                <path d="M3 11l5 5L17 4" fill="none" stroke="currentColor" stroke-width="2.5" />
              </svg>
              {drill.committed}
            </>
          )}
        </p>
        <Behind item={item} cutaway={cutaway} atS={shownAt(verdict)} />
        <Button onClick={() => setCutaway(!cutaway)}>{cutaway ? drill.wallBack : drill.wallAway}</Button>
      </div>
      <div class="stack stack-wide">
        <ul class="parts">
          {verdict.parts.map((part) => (
            <PartView key={part.ask} item={item} part={part} />
          ))}
        </ul>
        <Explained verdict={verdict} shown={verdict.parts.every(({ kind }) => kind === 'level')} />
        <p class="small soft">{drill.scoredBy(verdict.engine)}</p>
        <Button look="main" wide disabled={onward.felt} onClick={() => onward.tap()}>
          {last ? drill.finish : drill.next}
        </Button>
      </div>
    </div>
  )
}

/** Of what was to be called out, the moment at which it first showed. */
const shownAt = ({ parts }: Verdict): number | undefined => parts[0]?.truth[0]?.at_s

interface BehindProps {
  item: Item
  cutaway: boolean
  /** The moment shown, where it is not the item's own. */
  atS?: number | undefined
}

/** What was behind the wall, as the kind of item was looked at. */
export function Behind({ item, cutaway, atS }: BehindProps) {
  if (item.question.move) return <Futures item={item} cutaway={cutaway} />
  if (item.kind === 'two_looks' && item.look_s) return <TwoLooks item={item} cutaway={cutaway} />
  if (item.kind === 'which_of_two' && item.second) return <TwoScenes item={item} cutaway={cutaway} />
  return <OneScene item={item} cutaway={cutaway} atS={atS} />
}

/** A fire that was watched is shown as it stood at the end, unless another moment tells more. */
function OneScene({ item, cutaway, atS }: BehindProps) {
  const { fire } = useFire(item.scenario, atS ?? item.watch?.to_s ?? item.moment_s)
  return <SceneView item={item} fire={fire} cutaway={cutaway} />
}

interface ExplainedProps {
  verdict: Verdict
  /** The rails above say already what each level looks like, which is all that there is to why. */
  shown?: boolean
}

export function Explained({ verdict, shown = false }: ExplainedProps) {
  const said = [
    ...(shown ? [] : [[drill.why, verdict.why] as const]),
    [drill.tell, verdict.tell],
    [drill.rule, verdict.rule],
  ] as const
  return (
    <dl class="explained">
      {said.map(([name, text]) => (
        <div key={name}>
          <dt class="label">{name}</dt>
          {text.split('\n').map((line) => (
            <dd key={line}>{line}</dd>
          ))}
        </div>
      ))}
      <div>
        <dt class="label">{drill.source}</dt>
        <dd class="small soft">{capital(verdict.source)}</dd>
      </div>
    </dl>
  )
}
