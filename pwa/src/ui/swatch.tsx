import { useEffect, useRef } from 'preact/hooks'
import { drawSwatch } from '../render'
import type { OrdinalCue } from '../words/scales'

// Swatches move, all by one clock, at a rate that a slow phone keeps up with
// and that shows a drift (chosen by us). Whoever asked for less motion gets
// stills.
const framesPerSecond = 20
const mostScript = 4 // ms of script in one picture; on a slow phone swatches then take turns
const still = 2 // s into the movement

type Draw = (t: number) => void
const moving = new Set<Draw>()
let began = 0
let last = 0

function tick(now: number): void {
  if (moving.size === 0) return
  requestAnimationFrame(tick)
  if (now - last < 1000 / framesPerSecond) return
  last = now
  const waiting = [...moving]
  while (waiting.length && performance.now() - now < mostScript) {
    const draw = waiting.shift()!
    draw((now - began) / 1000)
    moving.delete(draw) // to the end of the line, so that all come to their turn
    moving.add(draw)
  }
}

function follow(draw: Draw): () => void {
  if (moving.size === 0) {
    began = performance.now()
    requestAnimationFrame(tick)
  }
  moving.add(draw)
  return () => moving.delete(draw)
}

/** A small picture of smoke at one level of one cue, moving as such smoke moves. */
export function Swatch({ cue, level }: { cue: OrdinalCue; level: number }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  useEffect(() => {
    const draw: Draw = (t) => canvas.current && drawSwatch(canvas.current, cue, level, t)
    draw(still)
    if (matchMedia('(prefers-reduced-motion: reduce)').matches) return undefined
    return follow(draw)
  }, [cue, level])
  return <canvas ref={canvas} width={96} height={72} aria-hidden="true" />
}
