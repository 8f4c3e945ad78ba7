import { useEffect, useRef, useState } from 'preact/hooks'
import { Lent } from '../render/stage/stage'
import type { OrdinalCue } from '../words/scales'

/** A small picture of smoke at one level of one cue, moving as such smoke moves. */
export function Swatch({ cue, level }: { cue: OrdinalCue; level: number }) {
  const canvas = useRef<HTMLCanvasElement>(null)
  const lent = useRef<Lent>(null)
  const [attempt, tryAgain] = useState(0)
  useEffect(() => {
    const one = (lent.current = new Lent('swatch', canvas.current!, () => tryAgain(attempt + 1)))
    return () => one.leave()
  }, [attempt])
  useEffect(() => lent.current!.tell({ swatch: { cue, level } }), [cue, level, attempt])
  return <canvas key={attempt} ref={canvas} width={96} height={72} aria-hidden="true" />
}
