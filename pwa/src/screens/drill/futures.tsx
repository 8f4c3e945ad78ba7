import { useEffect, useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { drill } from '../../words/drill'
import type { Item } from '../../wire.gen'
import { useFire } from './fire'
import { SceneView } from './scene-view'

// The futures are watched this much faster than they happen, in small steps.
// Chosen by us: long enough for a room's layer to answer.
const faster = 5
const usualS = 120
const stepS = 0.5

/** The move made, beside the same fire left alone: both run from the same moment. */
export function Futures({ item, cutaway }: { item: Item; cutaway: boolean }) {
  const [turn, setTurn] = useState(0)
  return <Pair key={turn} item={item} cutaway={cutaway} turn={turn} again={() => setTurn(turn + 1)} />
}

function Pair({ item, cutaway, turn, again }: { item: Item; cutaway: boolean; turn: number; again(): void }) {
  const moved = useFire(item.scenario, item.moment_s, turn).fire
  const left = useFire(item.scenario, item.moment_s, turn).fire
  const [since, setSince] = useState<number>()
  const untilS = item.question.after_s || usualS
  const ready = moved && left
  useEffect(() => {
    if (!ready || since === undefined || since >= untilS) return undefined
    const timer = setTimeout(() => {
      void Promise.all([moved.advance(stepS), left.advance(stepS)]).then(() => setSince(since + stepS))
    }, (1000 * stepS) / faster)
    return () => clearTimeout(timer)
  }, [ready, since])

  const start = () => void moved!.move({ ...item.question.move!, t_s: 0 }).then(() => setSince(0))
  return (
    <div class="stack">
      <div class="pair">
        <SceneView item={item} fire={moved} cutaway={cutaway} caption={drill.withMove} />
        <SceneView item={item} fire={left} cutaway={cutaway} caption={drill.leftAlone} />
      </div>
      <div class="row futures-row">
        {since === undefined && (
          <Button disabled={!ready} onClick={start}>
            {drill.watch}
          </Button>
        )}
        {since !== undefined && since >= untilS && <Button onClick={again}>{drill.again}</Button>}
        {since !== undefined && (
          <span class="small" role="timer">
            {drill.watching(Math.round(since))}
          </span>
        )}
      </div>
    </div>
  )
}
