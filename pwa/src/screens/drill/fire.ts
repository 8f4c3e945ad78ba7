import { useEffect, useRef, useState } from 'preact/hooks'
import { readFrame, type FrameLook } from '../../render'
import type { Move, Scenario } from '../../wire.gen'
import { engine, type OpenedRun } from '../../worker/client'

// The longest stretch that one call may run on, so that the worker answers other
// calls in between. Chosen by us.
const stretch = 60 // s of fire

/** A fire in the worker, and its newest frame. */
export class Fire {
  frame: FrameLook | null = null
  #opened: OpenedRun
  #values: Float64Array

  private constructor(opened: OpenedRun) {
    this.#opened = opened
    this.#values = new Float64Array(opened.frameLength)
  }

  /** Lights a scenario and lets it burn up to a moment. */
  static async burn(scenario: Scenario, untilS: number): Promise<Fire> {
    const fire = new Fire(await engine.open(scenario))
    await fire.burnOn(untilS)
    return fire
  }

  /** Lets it burn for a while, in stretches. */
  async burnOn(seconds: number): Promise<void> {
    for (let t = 0; t < seconds; t += stretch) await this.advance(Math.min(stretch, seconds - t))
  }

  async advance(seconds: number): Promise<void> {
    const { run, compartments, openings } = this.#opened
    this.#values = await engine.advance(run, seconds, this.#values)
    this.frame = readFrame(this.#values, compartments.length, openings.length, this.frame ?? undefined)
  }

  async move(move: Move): Promise<void> {
    await engine.move(this.#opened.run, move)
  }

  close(): void {
    void engine.close(this.#opened.run).catch(() => {})
  }
}

/** A fire burned up to a moment, held as long as the component shows it. */
export function useFire(scenario: Scenario, untilS: number, turn = 0): { fire: Fire | undefined; failed: boolean } {
  const [fire, setFire] = useState<Fire>()
  const [failed, setFailed] = useState(false)
  const current = useRef<Fire | undefined>(undefined)
  useEffect(() => {
    let wanted = true
    setFire(undefined)
    setFailed(false)
    Fire.burn(scenario, untilS).then(
      (lit) => {
        if (!wanted) return lit.close()
        current.current = lit
        return setFire(lit)
      },
      () => wanted && setFailed(true),
    )
    return () => {
      wanted = false
      current.current?.close()
      current.current = undefined
    }
  }, [scenario, untilS, turn])
  return { fire, failed }
}
