import { useEffect, useRef } from 'preact/hooks'
import { drawSwatch } from '../render'
import type { OrdinalCue } from '../words/scales'

// Swatches move, all by one clock, at a rate that a slow phone keeps up with
// and that shows a drift (chosen by us). Whoever asked for less motion gets
// stills: they move only until their smoke is there.
const framesPerSecond = 20
const mostScript = 4 // ms of script in one picture; on a slow phone swatches then take turns

/** Draws a swatch some seconds into its movement; says whether it wants to be drawn again. */
type Draw = (t: number) => boolean
const moving = new Set<Draw>()
let began = 0
let last = 0
let request = 0 // one clock, also where the last swatch goes and the next comes within one picture

function tick(now: number): void {
  request = 0
  if (moving.size === 0) return
  request = requestAnimationFrame(tick)
  if (now - last < 1000 / framesPerSecond) return
  last = now
  const waiting = [...moving]
  while (waiting.length && performance.now() - now < mostScript) {
    const draw = waiting.shift()!
    moving.delete(draw)
    if (draw((now - began) / 1000)) moving.add(draw) // to the end of the line, so that all come to their turn
  }
}

function follow(draw: Draw): () => void {
  if (moving.size === 0) began = performance.now()
  request ||= requestAnimationFrame(tick)
  moving.add(draw)
  return () => moving.delete(draw)
}

/** A small picture of smoke at one level of one cue, moving as such smoke moves. */
export function Swatch({ cue, level }: { cue: OrdinalCue; level: number }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const calm = matchMedia('(prefers-reduced-motion: reduce)').matches
    const draw: Draw = (t) => canvas.current !== null && !(drawSwatch(canvas.current, cue, level, t) && calm)
    draw(0)
    return follow(draw)
  }, [cue, level])
  return <canvas ref={canvas} width={96} height={72} aria-hidden="true" />
}
