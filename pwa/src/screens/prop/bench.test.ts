import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import { buildings } from '../../buildings'
import { frameLength } from '../../render/frame'
import { FRAME_HEADER, FRAME_HEADER_LENGTH, COMPARTMENT_LENGTH, OPENING } from '../../wire.gen'

/** An engine in memory: runs that know their time and the moves made on them; what is open shows in the frame. */
const engine = vi.hoisted(() => {
  type Move = { opening?: string; open?: number }
  type Run = { steps: number; moves: { at: number; move: Move }[] }
  const runs = new Map<number, Run>()
  let next = 1
  let most = 0
  let filling = 0
  let slowMs = 0
  let openingAt = 0
  const add = (run: Run) => {
    runs.set(next, { steps: run.steps, moves: [...run.moves] })
    most = Math.max(most, runs.size)
    return { run: next++, compartments: Array.from({ length: 5 }, String), openings: Array.from({ length: 9 }, String), frameLength: 273 }
  }
  return {
    runs,
    most: () => most,
    reset: () => { runs.clear(); most = 0; slowMs = 0; filling = 0 },
    slow: (ms: number) => { slowMs = ms },
    showAt: (place: number) => { openingAt = place },
    open: async () => add({ steps: 0, moves: [] }),
    advance: async (id: number, seconds: number, out: Float64Array) => {
      if (++filling > 1) throw new Error('two frames at once')
      await (slowMs > 0 && seconds > 0 ? new Promise((done) => setTimeout(done, slowMs)) : Promise.resolve())
      filling--
      const run = runs.get(id)
      if (!run) throw new Error(`run ${id} is closed`)
      run.steps += Math.round(seconds / 0.05)
      out.fill(0)
      out[0] = run.steps * 0.05
      out[openingAt] = run.moves.findLast(({ move }) => move.opening === 'port_lower_left')?.move.open ?? 1
      return out
    },
    move: async (id: number, move: Move) => { runs.get(id)!.moves.push({ at: runs.get(id)!.steps, move }); return null },
    events: async () => [],
    clone: async (id: number) => add(runs.get(id)!),
    close: async (id: number) => { runs.delete(id); return null },
  }
})

vi.mock('../../worker/client', () => ({ engine, EngineProblem: class extends Error {} }))
const { Bench } = await import('./bench')

const box = buildings[0]!
engine.showAt(FRAME_HEADER_LENGTH + 5 * COMPARTMENT_LENGTH + OPENING.Open)

beforeEach(() => {
  engine.reset()
  vi.useFakeTimers()
  vi.stubGlobal('document', { hidden: false })
})
afterEach(() => {
  vi.useRealTimers()
  vi.unstubAllGlobals()
})

const run = (seconds: number) => vi.advanceTimersByTimeAsync(1000 * seconds)
const openOf = (bench: Awaited<ReturnType<typeof Bench.begin>>, which: 'first' | 'second') => bench[which]()!.openings[0]!.open

test('a frame is as long as the engine says', () => {
  expect(frameLength(5, 9)).toBe(273)
  expect(FRAME_HEADER.TS).toBe(0)
})

test('fire time runs with real time, and faster on demand', async () => {
  const bench = await Bench.begin(box)
  await run(10)
  expect(bench.now.value!.tS).toBeCloseTo(10, 0)
  bench.setSpeed(16)
  await run(5)
  expect(bench.now.value!.tS).toBeGreaterThan(86)
  expect(bench.now.value!.tS).toBeLessThan(91)
  expect(bench.now.value!.managesRate).toBeUndefined()
  bench.close()
})

test('tells the rate that a slow device manages, and still takes a tap between two pieces', async () => {
  const bench = await Bench.begin(box)
  engine.slow(100) // half a second of fire takes a tenth of a second: five times at most
  bench.setSpeed(16)
  await run(10)
  expect(bench.now.value!.managesRate).toBeGreaterThan(3.5)
  expect(bench.now.value!.managesRate).toBeLessThan(5.5)
  bench.lay(box.loads[0]!, 'lower_left')
  await run(0.3)
  expect(bench.now.value!.first.lit).toBe(true)
  bench.close()
})

test('stands still while paused, takes moves, and goes on by single seconds', async () => {
  const bench = await Bench.begin(box)
  bench.setPaused(true)
  await run(5)
  expect(bench.now.value!.tS).toBe(0)
  bench.lay(box.loads[0]!, 'lower_left')
  await run(0.1)
  expect(bench.now.value!.first.lit).toBe(true)
  bench.stepOn(1)
  await run(0.1)
  expect(bench.now.value!.tS).toBeCloseTo(1, 9)
  bench.close()
})

test('catches up with what passed while the page was hidden, up to a minute', async () => {
  const bench = await Bench.begin(box)
  await run(2)
  vi.stubGlobal('document', { hidden: true })
  await run(30)
  expect(bench.now.value!.tS).toBeLessThan(2.5)
  vi.stubGlobal('document', { hidden: false })
  await run(1)
  expect(bench.now.value!.tS).toBeGreaterThan(32)
  expect(bench.now.value!.tS).toBeLessThan(34)
  vi.stubGlobal('document', { hidden: true })
  await run(3600)
  vi.stubGlobal('document', { hidden: false })
  await run(1)
  expect(bench.now.value!.tS).toBeLessThan(96)
  bench.close()
})

test('looking back shows what was, plays it, and burns on from the newest moment', async () => {
  const bench = await Bench.begin(box)
  await run(20)
  bench.setOpening('port_lower_left', 0)
  await run(20)
  bench.seek(10)
  expect(bench.now.value!.tS).toBe(10)
  expect(openOf(bench, 'first')).toBe(1)
  bench.seek(25)
  expect(openOf(bench, 'first')).toBe(0)
  expect(engine.runs.size).toBeLessThan(12)
  bench.setPaused(false)
  await run(20)
  expect(bench.now.value!.first.headS).toBeCloseTo(45, 0)
  bench.close()
})

test('a move made while looking back begins a second fire; the first stays as it was', async () => {
  const bench = await Bench.begin(box)
  await run(20)
  bench.setOpening('port_lower_left', 0)
  await run(20)
  bench.seek(10)
  bench.setOpening('port_lower_left', 0.5)
  await run(0.1)
  const { first, second, branchS } = bench.now.value!
  expect(branchS).toBe(10)
  expect(second!.moves.map(({ move }) => move.open)).toEqual([0.5])
  expect(first.moves.map(({ move }) => move.open)).toEqual([0])
  bench.setPaused(false)
  await run(15)
  expect([openOf(bench, 'first'), openOf(bench, 'second')]).toEqual([0, 0.5])
  bench.close()
})

test('the same fire with the port kept open: the move is left out, the later ones are made', async () => {
  const bench = await Bench.begin(box)
  await run(20)
  bench.setOpening('port_lower_left', 0)
  await run(10)
  bench.spray(0.1, 'lower_left')
  await run(10)
  bench.leaveOut([0])
  await run(25)
  const { second, first } = bench.now.value!
  expect(second!.moves.map(({ move }) => move.opening ?? 'water')).toEqual(['water'])
  expect(second!.moves[0]!.step).toBe(first.moves[1]!.step)
  expect(openOf(bench, 'second')).toBe(1)
  bench.close()
})

test('both futures are shown, and the clock comes back when one is kept', async () => {
  const bench = await Bench.begin(box)
  await run(20)
  bench.whatIf('port_lower_left', 0)
  await run(15)
  const asked = bench.now.value!.branchS!
  expect([openOf(bench, 'first'), openOf(bench, 'second')]).toEqual([1, 0])
  bench.setPaused(true)
  bench.keep('second')
  await run(0.5)
  expect(bench.now.value!.second).toBeUndefined()
  expect(bench.now.value!.tS).toBeCloseTo(asked, 6)
  expect(openOf(bench, 'first')).toBe(0)
  expect(bench.now.value!.first.headS).toBeCloseTo(asked + 15, 0)
  bench.close()
})

test('a moment can be gone back to however far it lies', async () => {
  const bench = await Bench.begin(box)
  bench.setSpeed(16)
  await run(60)
  bench.setOpening('port_lower_left', 0.5)
  await run(60)
  bench.seek(333.3)
  bench.branch()
  await run(0.5)
  const shown = [...engine.runs.values()].filter(({ steps }) => steps === 6666)
  expect(shown.length).toBeGreaterThan(0)
  expect(bench.now.value!.branchS).toBeCloseTo(333.3, 6)
  bench.close()
})

test('never holds more runs than the worker lends, and none once closed', async () => {
  const bench = await Bench.begin(box)
  bench.setSpeed(16)
  for (let k = 0; k < 6; k++) {
    await run(40)
    bench.seek(20 * k)
    bench.branch()
    bench.setPaused(false)
    await run(5)
    bench.keep(k % 2 === 0 ? 'second' : 'first')
    await run(0.2)
  }
  expect(bench.problem.value).toBeUndefined()
  expect(engine.most()).toBeLessThanOrEqual(24)
  bench.close()
  await run(1)
  expect(engine.runs.size).toBe(0)
})
