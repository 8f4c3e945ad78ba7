import { useEffect, useRef, useState } from 'preact/hooks'
import { oncePainted } from './painted'

/**
 * A tap that is seen at once and acted on in the next picture, however long what
 * follows takes to make. Further taps until then are one with the first; where
 * the control has gone by then, nothing is done.
 */
export function useTap<What extends unknown[]>(act: (...what: What) => void) {
  const [felt, feel] = useState(false)
  const waits = useRef(false)
  const latest = useRef(act)
  latest.current = act
  useEffect(() => () => { waits.current = false }, [])
  const tap = (...what: What) => {
    if (waits.current) return
    waits.current = true
    feel(true)
    oncePainted(() => {
      if (!waits.current) return
      waits.current = false
      feel(false)
      latest.current(...what)
    })
  }
  return { felt, tap }
}
