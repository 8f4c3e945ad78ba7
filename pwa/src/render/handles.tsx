import type { RefObject } from 'preact'
import { useMemo, useRef, useState, useEffect } from 'preact/hooks'
import { scene as words } from '../words/scene'
import { layOut, type Place } from './layout'
import { openingName } from '../words/names'
import type { SceneProps } from './scene-props'
import { ACROSS, corners, facingOf, frameView, type View } from './view'
import { NARROW, zoomFor, type Zoom } from './zoom'

interface HandlesProps extends SceneProps { canvas: RefObject<HTMLCanvasElement | null>; near: boolean; far: boolean }

/** The openings as things to press: over the drawing, in its own places. */
export function Handles(props: HandlesProps) {
  const { aspect, width } = useShape(props.canvas)
  const away = props.far ? ACROSS : 1
  const view = useMemo(() => frameView(layOut(props.scenario), props.side, aspect, away), [props.scenario, props.side, aspect, away])
  const cutaway = props.cutaway ?? false
  const place = props.near ? view.layout.places.find(({ id }) => id === props.selected) : undefined
  const zoom = zoomFor(view, { cutaway, narrow: width < NARROW, place })
  const shown = view.layout.places.filter((one) => reachable(view, one, cutaway) && inPicture(view, zoom, bounds(view, one, cutaway)))
  return <>{shown.map((one) => <Handle key={one.id} {...props} view={view} zoom={zoom} place={one} />)}</>
}

function reachable(view: View, place: Place, cutaway: boolean): boolean {
  const facing = facingOf(view, place)
  return facing === undefined ? cutaway : facing === 'eye' || facing === 'right' || facing === 'up'
}

/** Whether the middle of it is on the canvas. */
function inPicture({ widthM, heightM }: View, zoom: Zoom, { x, y }: { x: number; y: number }): boolean {
  const [right, down] = [((x - zoom.x) * zoom.scale) / widthM, ((y - zoom.y) * zoom.scale) / heightM]
  return right > 0 && right < 1 && down > 0 && down < 1
}

/** One opening: a slider where it can be moved, else a button. */
function Handle({ view, zoom, place, frame, cutaway, selected, onPick, onOpen }: HandlesProps & { view: View; zoom: Zoom; place: Place }) {
  const drag = useRef<{ x: number; open: number; moved: boolean } | null>(null)
  const open = frame()?.openings[place.index]?.open ?? place.opening.open ?? 0
  const box = bounds(view, place, cutaway ?? false)
  const set = (share: number) => onOpen?.(place.id, Math.round(20 * Math.max(0, Math.min(1, share))) / 20)
  const [across, down] = [(100 * zoom.scale) / view.widthM, (100 * zoom.scale) / view.heightM]
  const where = {
    left: `${across * (box.x - zoom.x)}%`, top: `${down * (box.y - zoom.y)}%`, width: `${across * box.w}%`, height: `${down * box.h}%`,
  }
  const slider = onOpen && {
    role: 'slider' as const, 'aria-valuemin': 0, 'aria-valuemax': 100, 'aria-valuenow': Math.round(100 * open),
    'aria-valuetext': words.openBy(Math.round(100 * open)),
  }
  return (
    <button
      type="button"
      class="scene-handle"
      style={where}
      aria-label={openingName(place.opening)}
      aria-current={selected === place.id}
      {...slider}
      onPointerDown={(event) => {
        if (!onOpen) return
        event.currentTarget.setPointerCapture(event.pointerId)
        drag.current = { x: event.clientX, open, moved: false }
      }}
      onPointerMove={(event) => {
        const held = drag.current
        if (!held) return
        const dx = event.clientX - held.x
        if (Math.abs(dx) > 6) held.moved = true
        if (held.moved) set(held.open - dx / Math.max(60, event.currentTarget.clientWidth))
      }}
      onPointerUp={() => {
        if (drag.current?.moved) suppressed = performance.now()
        drag.current = null
      }}
      onPointerCancel={() => (drag.current = null)}
      onClick={() => {
        if (performance.now() - suppressed < 80) return
        onPick?.(place.id)
        if (onOpen) set(open > 0.5 ? 0 : 1)
      }}
      onKeyDown={(event) => {
        const step = { ArrowRight: 0.1, ArrowUp: 0.1, ArrowLeft: -0.1, ArrowDown: -0.1 }[event.key]
        const end = { Home: 0, End: 1 }[event.key]
        if (!onOpen || (step === undefined && end === undefined)) return
        event.preventDefault()
        set(end ?? open + step!)
      }}
    />
  )
}

/** The click that a browser sends after a drag is not a tap. */
let suppressed = 0

function bounds(view: View, place: Place, inSection: boolean): { x: number; y: number; w: number; h: number } {
  const points = corners(view, place, inSection)
  const xs = points.map((p) => p.x)
  const ys = points.map((p) => p.y)
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  return { x: (x0 + x1) / 2, y: (y0 + y1) / 2, w: x1 - x0, h: y1 - y0 }
}

/** Width over height of the canvas, and its width, followed as the page is resized. */
function useShape(canvas: RefObject<HTMLCanvasElement | null>): { aspect: number; width: number } {
  const [shape, setShape] = useState({ aspect: 5 / 6, width: 390 })
  useEffect(() => {
    const watch = new ResizeObserver(([entry]) => {
      if (entry && entry.contentRect.height > 0) setShape({ aspect: entry.contentRect.width / entry.contentRect.height, width: entry.contentRect.width })
    })
    watch.observe(canvas.current!)
    return () => watch.disconnect()
  }, [])
  return shape
}
