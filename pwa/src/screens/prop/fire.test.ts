import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { buildings } from '../../buildings'
import { frameLength } from '../../render/frame'
import { FRAME_HEADER } from '../../wire.gen'

/** An engine in memory: runs that only know their time and the moves made on them. */
const engine = vi.hoisted(() => {
  const runs = new Map<number, { t: number; moves: unknown[] }>()
  let next = 1
  let most = 0
  let filling = 0
  const opened = (run: number) => ({
    run, compartments: Array.from({ length: 5 }, String), openings: Array.from({ length: 9 }, String), frameLength: 273,
  })
  const add = (t: number, moves: unknown[]) => {
    runs.set(next, { t, moves: [...moves] })
    most = Math.max(most, runs.size)
    return opened(next++)
  }
  return {
    runs,
    most: () => most,
    reset: () => { runs.clear(); most = 0 },
    open: async () => add(0, []),
    advance: async (run: number, seconds: number, out: Float64Array) => {
      if (++filling > 1) throw new Error('two frames at once')
      await Promise.resolve()
      filling--
      const one = runs.get(run)
      if (!one) throw new Error(`run ${run} is closed`)
      one.t += seconds
      out[0] = one.t
      return out
    },
    move: async (run: number, move: unknown) => { runs.get(run)!.moves.push(move); return null },
    events: async () => [],
    clone: async (run: number) => add(runs.get(run)!.t, runs.get(run)!.moves),
    close: async (run: number) => { runs.delete(run); return null },
  }
})

vi.mock('../../worker/client', () => ({ engine, EngineProblem: class extends Error {} }))
const { BenchFire } = await import('./fire')

beforeEach(() => {
  engine.reset()
  vi.useFakeTimers()
  vi.stubGlobal('document', { hidden: false })
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

const box = buildings[0]!
const run = (seconds: number) => vi.advanceTimersByTimeAsync(1000 * seconds)

test('a frame is as long as the engine says', () => {
  expect(frameLength(5, 9)).toBe(273)
  expect(FRAME_HEADER.TS).toBe(0)
})

test('fire time runs with real time, and faster on demand', async () => {
  const fire = await BenchFire.begin(box)
  await run(10)
  expect(fire.now.value!.tS).toBeCloseTo(10.1, 0)
  fire.speed.value = 4
  await run(5)
  expect(fire.now.value!.tS).toBeCloseTo(30.1, 0)
  fire.close()
})

test('stands still while paused or hidden, and still takes moves', async () => {
  const fire = await BenchFire.begin(box)
  fire.paused.value = true
  await run(5)
  expect(fire.now.value!.tS).toBeLessThan(0.5)
  fire.lay(box.loads[0]!, 'lower_left')
  await run(0.1)
  expect(fire.now.value!.lit).toBe(true)
  fire.paused.value = false
  vi.stubGlobal('document', { hidden: true })
  await run(5)
  expect(fire.now.value!.tS).toBeLessThan(0.5)
  fire.close()
})

test('going back drops what was done since, and one can go back again', async () => {
  const fire = await BenchFire.begin(box)
  fire.lay(box.loads[1]!, 'lower_left')
  await run(25)
  fire.spray(0.1, 'lower_left')
  await run(8)
  const before = fire.now.value!.tS
  fire.back()
  await run(0.05)
  const after = fire.now.value!
  expect(before - after.tS).toBeGreaterThanOrEqual(14)
  expect(before - after.tS).toBeLessThan(23)
  expect(after.lit).toBe(true)
  expect(after.sprayedL).toBe(0)
  const shown = [...engine.runs.values()].find((one) => Math.abs(one.t - after.tS) < 0.2)!
  expect(shown.moves).not.toContainEqual(expect.objectContaining({ water_l: 0.1 }))
  await run(2)
  expect(fire.now.value!.tS).toBeGreaterThan(after.tS + 1)
  fire.close()
})

test('never holds more than a few runs, and none once closed', async () => {
  const fire = await BenchFire.begin(box)
  fire.speed.value = 10
  await run(60)
  for (let k = 0; k < 5; k++) {
    fire.back()
    await run(1)
  }
  expect(engine.most()).toBeLessThanOrEqual(9)
  fire.close()
  await run(1)
  expect(engine.runs.size).toBe(0)
})
