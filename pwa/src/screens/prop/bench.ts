import { signal } from '@preact/signals'
import type { Building, Load } from '../../buildings'
import type { FrameLook } from '../../render'
import type { Move, Side } from '../../wire.gen'
import { EngineProblem } from '../../worker/client'
import { Burn } from './burn'
import { Pace } from './pace'
import { secondsAt, STEP_S, stepAt } from './past'
import { viewOf, type Now } from './view'

// The bench: one fire, or two on the same clock. The clock may stand anywhere
// in what has burned so far; let run, it plays what was until it reaches the
// newest moment, and from there the fire burns on.

/** Which of two fires: the one that is, or the one that was branched off it. */
export type Which = 'first' | 'second'
export type Target = Which | 'both'

/** Real time between two beats, and between two changes of the figures on the panels. Chosen by us. */
const BEAT_MS = 100
const TELL_MS = 250
/** Fire time in one piece of a beat, s: after each, what a person did comes first. Chosen by us. */
const PIECE_S = 0.5
/** A door that is tapped swings for this long, s. Chosen by us. */
const SWING_S = 0.5

export class Bench {
  readonly building: Building
  readonly now = signal<Now | undefined>(undefined)
  readonly problem = signal<string | undefined>(undefined)
  readonly speed = signal(1)
  readonly paused = signal(false)
  /** Where a move goes that is not made on one of two pictures. */
  readonly target = signal<Target>('second')
  #first: Burn
  #second: Burn | undefined
  #branch = 0
  #returns = false
  #step = 0
  #pace = new Pace()
  #last = performance.now()
  #stepThen = 0
  #jobs: (() => Promise<unknown>)[] = []
  #turning = new Map<string, number>()
  #running = false
  #toldAt = -TELL_MS
  #toldStep = 0
  #timer: ReturnType<typeof setInterval> | undefined
  #closed = false

  private constructor(building: Building, first: Burn) {
    this.building = building
    this.#first = first
  }

  /** Sets a building on the bench, cold, with moves that will be made by themselves at their times. */
  static async begin(building: Building, moves: readonly Move[] = []): Promise<Bench> {
    const burn = await Burn.cold(building)
    burn.planned = moves.map((move) => ({ step: stepAt(move.t_s), move: { ...move, t_s: 0 } }))
    const bench = new Bench(building, burn)
    bench.#tell()
    bench.#timer = setInterval(() => bench.#beat(), BEAT_MS)
    return bench
  }

  /** The frame to draw, of either fire. */
  first = (): FrameLook => this.#first.lookAt(this.#step)
  second = (): FrameLook | null => this.#second?.lookAt(this.#step) ?? null

  /** Both pasts, for the curves. */
  get burns(): readonly Burn[] { return this.#second ? [this.#first, this.#second] : [this.#first] }

  /** Opens or shuts; `swing` for a tap, so that one sees it turn. While it is dragged only the newest place counts. */
  setOpening(opening: string, open: number, which?: Which, swing = false): void {
    const key = `${which} ${opening}`
    const waits = this.#turning.has(key)
    this.#turning.set(key, open)
    if (waits) return
    this.#do(async () => {
      const share = this.#turning.get(key)!
      this.#turning.delete(key)
      await this.#make({ t_s: 0, opening, open: share, ...(swing && !this.paused.value && { over_s: SWING_S }) }, which)
    })
  }

  lay({ parts }: Load, where: string): void {
    this.#do(async () => {
      for (const { fuel, kg } of parts) await this.#make({ t_s: 0, fuel, mass_kg: kg, in: where })
    })
  }

  spray(litres: number, where: string): void {
    this.#do(() => this.#make({ t_s: 0, water_l: litres, in: where }))
  }

  wind(speedMS: number, from: Side): void {
    this.#do(() => this.#make({ t_s: 0, wind_m_s: speedMS, wind_from: from }))
  }

  /** Looks at another moment of what has been, and stays there. */
  seek(tS: number): void {
    this.paused.value = true
    this.#pace.settle()
    this.#step = Math.max(0, Math.min(stepAt(tS), this.#head()))
    this.#tell()
  }

  /** Goes on by a little, and stands. */
  stepOn(seconds: number): void {
    this.paused.value = true
    this.#pace.settle()
    this.#do(() => this.#advance(stepAt(seconds)))
  }

  setSpeed(speed: number): void {
    this.speed.value = speed
    this.#pace.settle()
  }

  setPaused(paused: boolean): void {
    this.paused.value = paused
    this.#pace.settle()
    this.#tell()
  }

  /** A second fire from this moment, so far the same; nothing that was done later is done to it. */
  branch(): void {
    this.#do(() => this.#fork(this.#step))
  }

  /** A second fire from this moment with one thing done; the clock comes back here when one of the two is kept. */
  whatIf(opening: string, open: number): void {
    this.#do(async () => {
      await this.#fork(this.#step)
      await this.#second!.apply({ t_s: 0, opening, open })
      this.#returns = true
      this.setPaused(false)
    })
  }

  /** The same fire with some of its moves left out and all the others made at their times; shown from the first of them. */
  leaveOut(indexes: readonly number[]): void {
    this.#do(async () => {
      const all = this.#first.moves
      const at = all[indexes[0]!]!.step
      await this.#fork(at, indexes[0])
      this.#second!.planned = all.filter((_, k) => k > indexes[0]! && !indexes.includes(k))
      this.#step = at
      this.setPaused(false)
    })
  }

  /** Ends the comparison: one of the two is the fire from now on. */
  keep(which: Which): void {
    this.#do(async () => {
      if (!this.#second) return
      const goes = which === 'first' ? this.#second : this.#first
      if (which === 'second') this.#second.inherit(this.#first, this.#branch)
      this.#first = which === 'first' ? this.#first : this.#second
      goes.close()
      this.#second = undefined
      if (this.#returns) this.#step = this.#branch
      this.#step = Math.min(this.#step, this.#first.step)
    })
  }

  close(): void {
    this.#closed = true
    clearInterval(this.#timer)
    for (const burn of this.burns) burn.close()
  }

  #head(): number {
    return Math.max(...this.burns.map(({ step }) => step))
  }

  async #fork(step: number, made?: number): Promise<void> {
    const second = await this.#first.fork(Math.min(step, this.#first.step), made)
    this.#second?.close()
    this.#second = second
    this.#branch = second.step
    this.#returns = false
    this.target.value = 'second'
  }

  /** Makes a move at the moment shown. In the past of a single fire it begins a second one; in that of one of two it takes back what came after. */
  async #make(move: Move, which?: Which): Promise<void> {
    const past = this.#step < this.#first.step
    if (past && (!this.#second || this.#step < this.#branch)) {
      await this.#fork(this.#step)
      return this.#second!.apply(move)
    }
    for (const burn of this.#aimedAt(which)) {
      await burn.advanceTo(this.#step)
      if (this.#step < burn.step) await burn.cut(this.#step)
      await burn.apply(move)
    }
  }

  #aimedAt(which?: Which): Burn[] {
    const aim = which ?? this.target.value
    if (!this.#second || aim === 'first') return [this.#first]
    return aim === 'second' ? [this.#second] : [this.#first, this.#second]
  }

  /** One call after the other; what a person does comes before the fire goes on. */
  #do(job: () => Promise<unknown>): void {
    this.#jobs.push(job)
    void this.#run()
  }

  #beat(): void {
    if (document.hidden) return
    const at = performance.now()
    const realS = (at - this.#last) / 1000
    this.#last = at
    if (!this.paused.value) this.#pace.owe(realS, this.speed.value)
    if (!this.paused.value) this.#pace.note(realS, secondsAt(this.#step - this.#stepThen))
    this.#stepThen = this.#step
    void this.#run()
  }

  async #run(): Promise<void> {
    if (this.#running) return
    this.#running = true
    try {
      while (!this.#closed && (await this.#next()));
      if (this.#closed) this.close()
    } finally {
      this.#running = false
      if (this.paused.value && this.#step !== this.#toldStep) this.#tell() // what stands is told to the last step
    }
  }

  /** Does one thing that waits; false when nothing does. */
  async #next(): Promise<boolean> {
    const job = this.#jobs.shift()
    try {
      if (!job && !(await this.#catchUp()) && !(await this.#goOn())) return false
      await job?.()
      if (job) this.problem.value = undefined
    } catch (error) {
      this.problem.value = error instanceof EngineProblem ? error.message : String(error)
      this.#pace.settle()
    }
    this.#tell(!job)
    return true
  }

  /** Of two fires one may not have burned as far as the clock was drawn. */
  async #catchUp(): Promise<boolean> {
    const late = this.burns.find(({ step }) => step < this.#step)
    await late?.advanceTo(Math.min(this.#step, late.step + stepAt(PIECE_S)))
    return late !== undefined
  }

  async #goOn(): Promise<boolean> {
    const seconds = this.paused.value ? 0 : this.#pace.take(PIECE_S)
    const steps = Math.floor(seconds / STEP_S + 1e-6)
    this.#pace.giveBack(seconds - secondsAt(steps))
    if (steps === 0) return false
    await this.#advance(steps)
    return true
  }

  async #advance(steps: number): Promise<void> {
    const end = stepAt(this.building.scenario.end_s)
    const to = Math.min(this.#step + steps, end)
    for (const burn of this.burns) if (burn.step < to) await burn.advanceTo(to)
    this.#step = to
    if (to === end) this.setPaused(true)
  }

  /** Shows the newest figures; in passing at most a few times a second. */
  #tell(inPassing = false): void {
    if (this.#closed || (inPassing && performance.now() - this.#toldAt < TELL_MS)) return
    this.#toldAt = performance.now()
    this.#toldStep = this.#step
    const { rate } = this.#pace
    const short = rate !== undefined && rate < 0.9 * this.speed.value
    this.now.value = {
      tS: secondsAt(this.#step),
      first: viewOf(this.#first, this.#step),
      second: this.#second && viewOf(this.#second, this.#step),
      branchS: this.#second && secondsAt(this.#branch),
      behindS: this.#pace.behindS,
      managesRate: short ? rate : undefined,
    }
  }
}
