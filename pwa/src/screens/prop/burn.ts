import type { Building } from '../../buildings'
import { readFrame, type FrameLook } from '../../render'
import type { Event, Move } from '../../wire.gen'
import { engine, type OpenedRun } from '../../worker/client'
import { Past, SAMPLE_STEPS, STEP_S, wordsOf } from './past'

// One fire from cold to now: its run in the worker, every move made on it, its
// past in frames, and a few clones of the run on the way. As the engine gives
// the same fire for the same moves, any moment can be had again: the clone
// before it, and the moves since then.

/** A move and the step of the engine at which it was made. */
export interface Made { step: number; move: Move }

/** A clone kept on the way: where it stands, and how many of the moves are in it. */
interface Kept { step: number; made: number; run: number }

/** The most clones that one fire keeps; with more it drops every other one. Chosen by us, well within what the worker lends. */
const MOST_KEPT = 6
const FIRST_SPACING = 200 // steps: ten seconds at first, doubling with the length of the fire
/** The longest stretch that one call runs on, so that other calls get their turn. Chosen by us. */
const STRETCH = 400

export class Burn {
  readonly building: Building
  moves: Made[] = []
  /** Moves still to come by themselves, each at its step. */
  planned: Made[] = []
  events: Event[] = []
  past: Past
  /** How far it has burned, in steps. */
  step = 0
  #opened: OpenedRun
  #values: Float64Array
  #kept: Kept[] = []
  #spacing = FIRST_SPACING
  #live: FrameLook | undefined
  #shown: FrameLook | undefined
  readonly #out: Float64Array

  private constructor(building: Building, opened: OpenedRun, past: Past) {
    this.building = building
    this.#opened = opened
    this.past = past
    this.#values = new Float64Array(opened.frameLength)
    this.#out = new Float64Array(opened.frameLength)
  }

  /** A building, cold. */
  static async cold(building: Building): Promise<Burn> {
    const opened = await engine.open(building.scenario)
    const burn = new Burn(building, opened, new Past(wordsOf(opened.compartments.length, opened.openings.length)))
    await burn.#look(0)
    return burn
  }

  /** Burns on to a step; planned moves are made when their time comes. */
  async advanceTo(step: number): Promise<void> {
    while (this.step < step) {
      const next = this.planned[0]
      if (next && next.step <= this.step) {
        this.planned.shift()
        await this.apply(next.move)
        continue
      }
      const sample = this.step - (this.step % SAMPLE_STEPS) + SAMPLE_STEPS
      await this.#look(Math.min(step, sample, next?.step ?? step) - this.step)
    }
  }

  /** Makes a move now. */
  async apply(move: Move): Promise<void> {
    await engine.move(this.#opened.run, move)
    this.moves = [...this.moves, { step: this.step, move }]
    await this.#look(0)
  }

  /**
   * The same fire from an earlier step on, as another one, holding the first
   * `made` moves: by default all that were made up to that step.
   */
  async fork(step: number, made = this.#madeBy(step)): Promise<Burn> {
    const run = await this.#runAt(step, made)
    const burn = new Burn(this.building, run, this.past.upTo(step))
    burn.moves = this.moves.slice(0, made)
    burn.step = step
    await burn.#look(0)
    return burn
  }

  /** Takes back what happened after a step. */
  async cut(step: number, made = this.#madeBy(step)): Promise<void> {
    const run = await this.#runAt(step, made)
    close(this.#opened.run)
    for (const kept of this.#kept) if (kept.step > step || kept.made > made) close(kept.run)
    this.#kept = this.#kept.filter((kept) => kept.step <= step && kept.made <= made)
    this.#opened = run
    this.moves = this.moves.slice(0, made)
    this.planned = []
    this.past = this.past.upTo(step)
    this.step = step
    await this.#look(0)
  }

  /** How it looks, or looked, at a step. */
  lookAt(step: number): FrameLook {
    if (step >= this.step) return this.#live!
    this.past.read(step, this.#out)
    return (this.#shown = this.#read(this.#out, this.#shown))
  }

  /** Takes over another fire's clones from before a step, where both were one. */
  inherit(from: Burn, step: number): void {
    const ours = this.#kept[0]?.step ?? Infinity
    const taken = from.#kept.filter((kept) => kept.step < Math.min(step, ours))
    from.#kept = from.#kept.filter((kept) => !taken.includes(kept))
    this.#kept.unshift(...taken)
  }

  close(): void {
    for (const { run } of this.#kept) close(run)
    close(this.#opened.run)
  }

  #madeBy(step: number): number {
    return this.moves.filter((made) => made.step <= step).length
  }

  /** A run of its own that stands at a step with the first moves made. */
  async #runAt(step: number, made: number): Promise<OpenedRun> {
    const from = this.#kept.findLast((kept) => kept.step <= step && kept.made <= made)
    const opened = from ? await engine.clone(from.run) : await engine.open(this.building.scenario)
    let at = from?.step ?? 0
    let values: Float64Array = new Float64Array(opened.frameLength)
    const on = async (to: number) => {
      for (; at < to; at = Math.min(at + STRETCH, to)) {
        values = await engine.advance(opened.run, (Math.min(at + STRETCH, to) - at) * STEP_S, values)
      }
    }
    for (const one of this.moves.slice(from?.made ?? 0, made)) {
      await on(one.step)
      await engine.move(opened.run, one.move)
    }
    await on(step)
    return opened
  }

  /** Runs on by some steps and takes the new frame over. */
  async #look(steps: number): Promise<void> {
    this.#values = await engine.advance(this.#opened.run, steps * STEP_S, this.#values)
    this.step += steps
    this.#live = this.#read(this.#values, this.#live)
    if (this.step % SAMPLE_STEPS === 0 || steps === 0) this.past.add(this.step, this.#values)
    await this.#keep()
    if (this.#live.header.events !== this.events.length) this.events = await engine.events(this.#opened.run)
  }

  #read(values: Float64Array, into: FrameLook | undefined): FrameLook {
    return readFrame(values, this.#opened.compartments.length, this.#opened.openings.length, into)
  }

  async #keep(): Promise<void> {
    const last = this.#kept.at(-1)
    if (last && this.step - last.step < this.#spacing) return
    this.#kept.push({ step: this.step, made: this.moves.length, run: (await engine.clone(this.#opened.run)).run })
    if (this.#kept.length <= MOST_KEPT) return
    this.#spacing *= 2
    for (let i = this.#kept.length - 2; i > 0; i -= 2) close(this.#kept.splice(i, 1)[0]!.run)
  }
}

/** A run that is no longer wanted; it may be gone already with its worker. */
function close(run: number): void {
  void engine.close(run).catch(() => {})
}
