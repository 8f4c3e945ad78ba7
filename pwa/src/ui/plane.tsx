import { useRef } from 'preact/hooks'
import { words } from '../words/frame'
import { trade } from '../words/trade'
import { Button } from './button'
import './plane.css'

// A step is finer than anyone can judge a neutral plane by eye (a tenth of the
// opening is this project's tolerance), and coarse enough to reach by key.
const step = 0.05

interface PlaneProps {
  /** A fraction of the opening's height from the sill, or null for "cannot tell". */
  chosen: number | null | undefined
  choose(share: number | null): void
  earlier?: number | undefined
}

/** The neutral plane, set by dragging its line, by tapping the opening or by key. */
export function Plane({ chosen, choose, earlier }: PlaneProps) {
  const opening = useRef<HTMLDivElement>(null)
  const shown = typeof chosen === 'number' ? chosen : undefined

  const at = (event: PointerEvent) => {
    const { top, height } = opening.current!.getBoundingClientRect()
    choose(snap(1 - (event.clientY - top) / height))
  }
  const onPointerDown = (event: PointerEvent) => {
    opening.current!.setPointerCapture(event.pointerId)
    at(event)
  }
  const onPointerMove = (event: PointerEvent) => {
    if (opening.current!.hasPointerCapture(event.pointerId)) at(event)
  }
  const move = (by: number) => choose(snap((shown ?? 0.5) + by))
  const onKeyDown = (event: KeyboardEvent) => {
    const by = keys[event.key]
    if (by === undefined) return
    event.preventDefault()
    move(by)
  }

  return (
    <div class="plane">
      <div
        ref={opening}
        class="plane-opening"
        role="slider"
        tabIndex={0}
        aria-label={trade.cues.neutral_plane}
        aria-orientation="vertical"
        aria-valuemin={0}
        aria-valuemax={100}
        aria-valuenow={Math.round((shown ?? 0.5) * 100)}
        aria-valuetext={shown === undefined ? words.app.notSet : trade.planeAt(shown)}
        onPointerDown={onPointerDown}
        onPointerMove={onPointerMove}
        onKeyDown={onKeyDown}
      >
        {shown === undefined && <span class="plane-hint">{words.app.planeHint}</span>}
        {shown !== undefined && <div class="plane-smoke" style={{ height: percent(1 - shown) }} />}
        {earlier !== undefined && <Line share={earlier} name={words.app.earlier} look="earlier" />}
        {shown !== undefined && <Line share={shown} name={`${Math.round(shown * 100)} %`} look="own" />}
      </div>
      <div class="plane-keys">
        <Button onClick={() => move(step)}>{words.app.higher}</Button>
        <Button onClick={() => move(-step)}>{words.app.lower}</Button>
        <Button aria-pressed={chosen === null} onClick={() => choose(null)}>
          {trade.cannotTell}
        </Button>
      </div>
    </div>
  )
}

/** The same opening afterwards: the line that was given over the true one. */
export function PlaneOver({ given, truth }: { given: number | undefined; truth: number }) {
  const said = given === undefined ? trade.cannotTell : trade.planeAt(given)
  const none = trade.planeNone(truth)
  const low = (given ?? 1) <= 0.5
  return (
    <div
      class="plane-opening plane-over"
      role="img"
      aria-label={`${words.app.yours}: ${said}. ${words.app.truth}: ${trade.planeAt(truth)}`}
    >
      <div class="plane-smoke" style={{ height: percent(1 - truth) }} />
      {none ? (
        <span class="plane-hint" style={given === undefined ? undefined : besides(given)}>
          {none}
        </span>
      ) : (
        <Line share={truth} name={words.app.truth} look="truth" />
      )}
      {given !== undefined && <Line share={given} name={words.app.yours} look={none && low ? 'own-under' : 'own'} />}
    </div>
  )
}

/** The larger of the two parts of an opening that a line cuts it into. */
function besides(line: number) {
  return line > 0.5 ? { top: percent(1 - line) } : { bottom: percent(line) }
}

function Line({ share, name, look }: { share: number; name: string; look: 'own' | 'own-under' | 'earlier' | 'truth' }) {
  return (
    <div class={`plane-line plane-line-${look}`} style={{ bottom: percent(share) }}>
      <span>{name}</span>
    </div>
  )
}

const keys: Record<string, number> = {
  ArrowUp: step,
  ArrowRight: step,
  ArrowDown: -step,
  ArrowLeft: -step,
  PageUp: 4 * step,
  PageDown: -4 * step,
  Home: -1,
  End: 1,
}

const snap = (share: number) => Math.min(1, Math.max(0, Math.round(share / step) * step))
const percent = (share: number) => `${Math.round(share * 100)}%`
