import { useEffect, useRef, useState } from 'preact/hooks'
import { scene as words } from '../words/scene'
import { trade } from '../words/trade'
import { units } from '../words/units'
import { Controls, type Distance } from './controls'
import { describe, type Seen } from './describe'
import { daylightOf, type Daylight } from './draw/palette'
import { Handles } from './handles'
import type { SceneProps } from './scene-props'
import { Show } from './show'
import './scene.css'

const STILL_S = 1 // with reduced motion, one picture a second
const SAID_EVERY_MS = 3000 // the text twin for screen readers follows slowly, chosen by us

/** How the scene is looked at, which the person decides on the picture itself. */
interface Standing { near: boolean; far: boolean; light: Daylight }

/** A building with its smoke, as seen from one side. */
export function Scene(props: SceneProps) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const [distance, stand] = useState<Distance>('whole')
  const [chosen, shine] = useState<Daylight | undefined>(props.light)
  const canCome = inSight(props)
  const standing: Standing = {
    near: distance === 'near' && canCome && !props.cutaway, far: distance === 'far' && !props.cutaway,
    light: chosen ?? daylightOf(document.documentElement.dataset['theme']),
  }
  const latest = useRef({ props, chosen, standing })
  latest.current = { props, chosen, standing }
  useEffect(() => run(canvas.current!, () => latest.current), [])
  return (
    <div class="scene">
      <canvas ref={canvas} role="img" aria-label={words.picture(trade.sides[props.side])} />
      {(props.onPick ?? props.onOpen) && <Handles {...props} near={standing.near} far={standing.far} canvas={canvas} />}
      {!props.cutaway && (
        <Controls distance={standing.near ? 'near' : standing.far ? 'far' : 'whole'} canCome={canCome} stand={stand} light={standing.light} shine={shine} />
      )}
      {!props.silent && <Twin {...props} seen={{ far: standing.far, light: standing.light, ...(props.wind && { wind: props.wind }) }} />}
    </div>
  )
}

/** Whether the marked opening is on the side that is looked at, or on the roof. */
function inSight({ scenario, side, selected }: SceneProps): boolean {
  const marked = scenario.openings.find(({ id }) => id === selected)
  return marked?.to === 'outside' && (marked.side === side || marked.kind === 'roof_hatch')
}

const calmly = () => matchMedia('(prefers-reduced-motion: reduce)')

/** What the picture shows, in words, for a screen reader. Not announced: it is there to be read when wanted. */
function Twin({ frame, scenario, side, seen }: SceneProps & { seen: Seen }) {
  const [said, say] = useState('')
  const latest = useRef({ frame, seen })
  latest.current = { frame, seen }
  useEffect(() => {
    const tell = () => {
      const now = latest.current.frame()
      say(now ? [...describe(now, scenario, side, latest.current.seen), ...(calmly().matches ? [words.arrows] : [])].join(' ') : '')
    }
    tell()
    const timer = setInterval(tell, SAID_EVERY_MS)
    return () => clearInterval(timer)
  }, [scenario, side, seen.far, seen.light])
  return <p class="scene-words">{said}</p>
}

const NOTED = 600 // about ten seconds of frames are kept for whoever measures
let noted = 0

/** Leaves the script time of a frame in the browser's own timeline, and not more of them than a few. */
function note(start: number, duration: number): void {
  if (++noted % NOTED === 0) performance.clearMeasures('lintel-picture')
  performance.measure('lintel-picture', { start, duration })
}

type Latest = () => { props: SceneProps; chosen: Daylight | undefined; standing: Standing }

/** Runs the picture until the component goes; stands still while the page is hidden. */
function run(canvas: HTMLCanvasElement, latest: Latest): () => void {
  const show = new Show(canvas)
  const calm = calmly()
  let last = performance.now()
  let request = requestAnimationFrame(tick)
  function tick(now: number): void {
    request = requestAnimationFrame(tick)
    const seconds = Math.min(1.2, (now - last) / 1000)
    if (document.hidden || canvas.clientWidth === 0) {
      last = now
      return
    }
    if (calm.matches && seconds < STILL_S && !show.catchingUp) return
    last = now
    const { props: p, chosen, standing } = latest()
    const took = show.advance(
      {
        scenario: p.scenario, side: p.side, frame: p.frame(), cutaway: p.cutaway ?? false, us: units.value === 'us', selected: p.selected,
        near: standing.near, far: standing.far, light: chosen, paused: p.paused ?? false, inPieces: true, ...(p.wind && { wind: p.wind }),
      },
      seconds,
      calm.matches,
    )
    note(now, took)
  }
  return () => cancelAnimationFrame(request)
}
