import { useEffect, useRef, useState } from 'preact/hooks'
import { Lent } from '../render/stage/stage'
import type { OrdinalCue } from '../words/scales'

/** A small picture of smoke at one level of one cue, moving as such smoke moves; a large one stands by itself. */
export function Swatch({ cue, level, large = false }: { cue: OrdinalCue; level: number; large?: boolean }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const lent = useRef<Lent>(null)
  const [attempt, tryAgain] = useState(0)
  useEffect(() => {
    const one = (lent.current = new Lent('swatch', canvas.current!, () => tryAgain(attempt + 1)))
    return () => one.leave()
  }, [attempt])
  useEffect(() => lent.current!.tell({ swatch: { cue, level } }), [cue, level, attempt])
  return <canvas key={attempt} ref={canvas} width={large ? 384 : 96} height={large ? 288 : 72} aria-hidden="true" />
}
