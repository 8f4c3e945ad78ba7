import { useCallback, useEffect, useState } from 'preact/hooks'
import type { Building } from '../../buildings'
import type { Move } from '../../wire.gen'
import { Bench } from './bench'

/** A building on the bench, from cold, with moves that will be made by themselves; started over on demand. */
export function useBench(building: Building, moves?: readonly Move[]) {
  const [bench, setBench] = useState<Bench>()
  const [failed, setFailed] = useState<string>()
  const [turn, setTurn] = useState(0)
  useEffect(() => {
    let wanted = true
    let begun: Bench | undefined
    setFailed(undefined)
    Bench.begin(building, moves).then(
      (ready) => {
        begun = ready
        if (!moves) ready.setPaused(true) // nothing burns yet: the clock starts with the flame
        if (wanted) setBench(ready)
        else ready.close()
      },
      (error: unknown) => wanted && setFailed(error instanceof Error ? error.message : String(error)),
    )
    return () => {
      wanted = false
      begun?.close()
      setBench(undefined)
    }
  }, [building, moves, turn])
  const again = useCallback(() => setTurn((n) => n + 1), [])
  return { bench, failed, again }
}
