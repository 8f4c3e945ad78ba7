import { useEffect, useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { useTap } from '../../ui/tap'
import { drill } from '../../words/drill'
import type { Item, Reply } from '../../wire.gen'
import { useFire } from './fire'
import { SceneView } from './scene-view'

// The fire is watched so that its whole stretch takes this long, and never
// slower than it burns; in steps short enough to look smooth. Chosen by us.
const filmS = 30
const stepMS = 250
const onward = 10 // s of fire at a press, for who goes through it by hand

/** A fire that runs: one reports at the moment at which one would, or lets it run to its end. */
export function CallOut({ item, ready, reply }: { item: Item; ready(): void; reply(reply: Reply): void }) {
  const { from_s, to_s } = item.watch!
  const { fire, failed } = useFire(item.scenario, from_s)
  const [at, setAt] = useState(from_s)
  const [playing, play] = useState(false)
  const speed = Math.max(1, (to_s - from_s) / filmS)
  const [ask] = item.question.asks
  const report = useTap(reply) // of the moment that was touched, whatever the screen takes to show it
  useEffect(() => {
    if (fire) ready()
  }, [fire])
  useEffect(() => {
    if (!playing || !fire || at >= to_s) return undefined
    const timer = setTimeout(() => void goOn((speed * stepMS) / 1000), stepMS)
    return () => clearTimeout(timer)
  }, [playing, fire, at])
  useEffect(() => {
    if (at >= to_s) reply({ ask: ask!.id, quiet: true })
  }, [at])

  const goOn = async (seconds: number) => {
    const step = Math.min(seconds, to_s - at)
    await fire!.advance(step)
    setAt(at + step >= to_s - 1e-6 ? to_s : at + step)
  }
  if (failed) return <p role="alert">{drill.failed}</p>
  return (
    <>
      <SceneView item={item} fire={fire} />
      {fire && (
        <section class="stack" aria-label={drill.ask}>
          <h2 class="ask-text">{ask!.text}</h2>
          <Button look="main" wide onClick={() => report.tap({ ask: ask!.id, at_s: Math.round(at * 10) / 10 })}>
            {drill.report}
          </Button>
          <div class="row spread">
            <Button onClick={() => play(!playing)}>{playing ? drill.hold : drill.play}</Button>
            {!playing && <Button onClick={() => void goOn(onward)}>{drill.onward(onward)}</Button>}
            <span class="small soft tabular" role="timer">
              {drill.watched(Math.round(at - from_s))}
            </span>
          </div>
        </section>
      )}
    </>
  )
}
