import { useEffect, useRef, useState } from 'preact/hooks'
import { scene as words } from '../words/scene'
import { trade } from '../words/trade'
import { Controls, type Distance } from './controls'
import { describe, type Seen } from './describe'
import { daylightOf, type Daylight } from './draw/palette'
import { Handles } from './handles'
import type { SceneProps } from './scene-props'
import { Lent } from './stage/stage'
import { Teller } from './stage/teller'
import './scene.css'

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
  const [attempt, tryAgain] = useState(0)
  useEffect(() => run(canvas.current!, () => latest.current, () => tryAgain(attempt + 1)), [attempt])
  return (
    <div class="scene">
      <canvas key={attempt} ref={canvas} role="img" aria-label={words.picture(trade.sides[props.side])} />
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

type Latest = () => { props: SceneProps; chosen: Daylight | undefined; standing: Standing }

/** Lends the canvas to the thread that draws, and tells it of every change until the component goes. */
function run(canvas: HTMLCanvasElement, latest: Latest, gone: () => void): () => void {
  const lent = new Lent('scene', canvas, gone)
  const letters = Number(getComputedStyle(canvas).getPropertyValue('--picture-letters')) || 1
  const size = { width: canvas.clientWidth, height: canvas.clientHeight, letters }
  const sizes = new ResizeObserver(([entry]) => {
    if (entry) [size.width, size.height] = [entry.contentRect.width, entry.contentRect.height]
  })
  sizes.observe(canvas)
  const teller = new Teller(lent)
  const tell = () => teller.tell(latest(), size)
  let request = requestAnimationFrame(tick)
  function tick(): void {
    request = requestAnimationFrame(tick)
    tell()
  }
  document.addEventListener('visibilitychange', tell)
  return () => {
    cancelAnimationFrame(request)
    document.removeEventListener('visibilitychange', tell)
    sizes.disconnect()
    lent.leave()
  }
}
