import { useEffect, useRef, useState } from 'preact/hooks'
import { picture as words } from '../words/en/picture'
import { trade } from '../words/en/trade'
import { describe } from './describe'
import { Handles } from './handles'
import type { SceneProps } from './scene-props'
import { Show } from './show'
import './scene.css'

const STILL_S = 1 // with reduced motion, one picture a second
const SAID_EVERY_MS = 3000 // the text twin for screen readers follows slowly, chosen by us

/** A building with its smoke, as seen from one side. */
export function Scene(props: SceneProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const [wanted, come] = useState(false)
  const canCome = !props.cutaway && inSight(props)
  const near = wanted && canCome
  const latest = useRef({ ...props, near })
  latest.current = { ...props, near }
  useEffect(() => run(canvas.current!, () => latest.current), [])
  return (
    <div class="scene">
      <canvas ref={canvas} role="img" aria-label={words.scene(trade.sides[props.side])} />
      {(props.onPick ?? props.onOpen) && <Handles {...props} near={near} canvas={canvas} />}
      {canCome && (
        <button type="button" class="scene-near" aria-pressed={near} onClick={() => come(!near)}>{near ? words.farther : words.nearer}</button>
      )}
      {!props.silent && <Twin {...props} />}
    </div>
  )
}

/** Whether the marked opening is on the side that is looked at, or on the roof. */
function inSight({ scenario, side, selected }: SceneProps): boolean {
  const marked = scenario.openings.find(({ id }) => id === selected)
  return marked?.to === 'outside' && (marked.side === side || marked.kind === 'roof_hatch')
}

/** What the picture shows, in words, for a screen reader. Not announced: it is there to be read when wanted. */
function Twin({ frame, scenario, side }: SceneProps) {
  const [said, say] = useState('')
  const latest = useRef(frame)
  latest.current = frame
  useEffect(() => {
    const tell = () => {
      const now = latest.current()
      say(now ? describe(now, scenario, side).join(' ') : '')
    }
    tell()
    const timer = setInterval(tell, SAID_EVERY_MS)
    return () => clearInterval(timer)
  }, [scenario, side])
  return <p class="scene-words">{said}</p>
}

const NOTED = 600 // about ten seconds of frames are kept for whoever measures
let noted = 0

/** Leaves the script time of a frame in the browser's own timeline, and not more of them than a few. */
function note(start: number, duration: number): void {
  if (++noted % NOTED === 0) performance.clearMeasures('lintel-picture')
  performance.measure('lintel-picture', { start, duration })
}

/** Runs the picture until the component goes; stands still while the page is hidden. */
function run(canvas: HTMLCanvasElement, props: () => SceneProps & { near: boolean }): () => void {
  const show = new Show(canvas)
  const calm = matchMedia('(prefers-reduced-motion: reduce)')
  let last = performance.now()
  let request = requestAnimationFrame(tick)
  function tick(now: number): void {
    request = requestAnimationFrame(tick)
    const seconds = Math.min(1.2, (now - last) / 1000)
    if (document.hidden || canvas.clientWidth === 0) {
      last = now
      return
    }
    if (calm.matches && seconds < STILL_S) return
    last = now
    const p = props()
    const took = show.advance(
      { scenario: p.scenario, side: p.side, frame: p.frame(), cutaway: p.cutaway ?? false, us: p.us ?? false, selected: p.selected, near: p.near, paused: p.paused ?? false, ...(p.wind && { wind: p.wind }) },
      seconds,
      calm.matches,
    )
    note(now, took)
  }
  return () => cancelAnimationFrame(request)
}
