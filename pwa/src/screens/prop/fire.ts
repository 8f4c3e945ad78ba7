import { signal } from '@preact/signals'
import type { Building, Load } from '../../buildings'
import { readFrame, type FrameLook } from '../../render'
import type { Event, Move, Side } from '../../wire.gen'
import { EngineProblem, engine, type OpenedRun } from '../../worker/client'

// The fire on the bench: one run in the worker, moved on in small steps of real
// time, with a few clones kept so that one can go back.

/** Real time between two frames, and the longest stretch of fire in one call. Chosen by us. */
const TICK_MS = 100
const LONGEST_S = 2
/** Time between two changes of the figures on the panels, fast enough to follow and slow enough to read. Chosen by us. */
const TELL_MS = 250
/** Fire time between two kept clones, how many are kept, and how far one step back goes. Chosen by us;
 * the worker holds a limited number of runs, which the other screens share. */
const KEEP_EVERY_S = 6
const KEEP = 6
const BACK_S = 15

/** What the panels show; replaced a few times a second, never once a frame. */
export interface Now {
  tS: number
  lit: boolean
  sprayedL: number
  windMS: number
  windFrom: Side
  events: Event[]
  frame: FrameLook
}

interface Kept { tS: number; run: OpenedRun; lit: boolean; sprayedL: number; windMS: number; windFrom: Side }

export class BenchFire {
  readonly building: Building
  readonly now = signal<Now | undefined>(undefined)
  readonly problem = signal<string | undefined>(undefined)
  readonly speed = signal(1)
  readonly paused = signal(false)
  #opened: OpenedRun
  #values: Float64Array
  #frame: FrameLook | undefined
  #kept: Kept[] = []
  #events: Event[] = []
  #lit = false
  #sprayedL = 0
  #windMS = 0
  #windFrom: Side = 'A'
  #timer: ReturnType<typeof setInterval> | undefined
  #busy: Promise<unknown> = Promise.resolve()
  #waiting = 0
  #toldAt = -TELL_MS
  #closed = false

  private constructor(building: Building, opened: OpenedRun) {
    this.building = building
    this.#opened = opened
    this.#values = new Float64Array(opened.frameLength)
  }

  /** Sets a building on the bench, cold. */
  static async begin(building: Building): Promise<BenchFire> {
    const fire = new BenchFire(building, await engine.open(building.scenario))
    await fire.#advance(0.1)
    fire.#tell()
    fire.#timer = setInterval(() => fire.#tick(), TICK_MS)
    return fire
  }

  /** The newest frame, for drawing. */
  frame = (): FrameLook | null => this.#frame ?? null

  setOpening(opening: string, open: number): void {
    this.#queue(() => engine.move(this.#opened.run, { t_s: 0, opening, open }))
  }

  lay({ fuel, kg, strawKg }: Load, where: string): void {
    this.#queue(async () => {
      if (strawKg) await engine.move(this.#opened.run, { t_s: 0, fuel: 'straw', mass_kg: strawKg, in: where })
      await engine.move(this.#opened.run, { t_s: 0, fuel, mass_kg: kg, in: where })
      this.#lit = true
    })
  }

  spray(litres: number, where: string): void {
    this.#queue(async () => {
      await engine.move(this.#opened.run, { t_s: 0, water_l: litres, in: where })
      this.#sprayedL += litres
    })
  }

  wind(speedMS: number, from: Side): void {
    this.#queue(async () => {
      await engine.move(this.#opened.run, { t_s: 0, wind_m_s: speedMS, wind_from: from } satisfies Move)
      this.#windMS = speedMS
      this.#windFrom = from
    })
  }

  /** Goes back by about a quarter of a minute, to a kept clone, and burns on from there. */
  back(): void {
    this.#queue(async () => {
      const to = (this.#frame?.header.tS ?? 0) - BACK_S
      while (this.#kept.length > 1 && this.#kept.at(-1)!.tS > to) this.#drop(this.#kept.pop()!)
      const kept = this.#kept.at(-1)
      if (!kept) return
      const again = await engine.clone(kept.run.run)
      void engine.close(this.#opened.run)
      this.#opened = again
      this.#lit = kept.lit
      this.#sprayedL = kept.sprayedL
      this.#windMS = kept.windMS
      this.#windFrom = kept.windFrom
      this.#events = []
      await this.#advance(0.05)
    })
  }

  close(): void {
    this.#closed = true
    clearInterval(this.#timer)
    for (const kept of this.#kept) this.#drop(kept)
    void engine.close(this.#opened.run).catch(() => {})
  }

  #drop(kept: Kept): void {
    void engine.close(kept.run.run).catch(() => {})
  }

  #tick(): void {
    if (this.paused.value || document.hidden || this.#waiting > 2) return
    this.#queue(() => this.#advance((this.speed.value * TICK_MS) / 1000), true)
  }

  /** One call after the other: a frame's array is in the worker while it is being filled. */
  #queue(job: () => Promise<unknown>, inPassing = false): void {
    this.#waiting++
    this.#busy = this.#busy.then(job).then(
      () => {
        this.problem.value = undefined
      },
      (error: unknown) => {
        this.problem.value = error instanceof EngineProblem ? error.message : String(error)
      },
    ).then(() => {
      this.#waiting--
      this.#tell(inPassing)
    })
  }

  async #advance(seconds: number): Promise<void> {
    if (this.#closed) return
    const { run, compartments, openings } = this.#opened
    this.#values = await engine.advance(run, Math.min(seconds, LONGEST_S), this.#values)
    this.#frame = readFrame(this.#values, compartments.length, openings.length, this.#frame)
    await this.#keep()
    if (this.#frame.header.events !== this.#events.length) this.#events = await engine.events(run)
  }

  async #keep(): Promise<void> {
    const { tS } = this.#frame!.header
    const last = this.#kept.at(-1)
    if (last && tS - last.tS < KEEP_EVERY_S) return
    const run = await engine.clone(this.#opened.run)
    this.#kept.push({ tS, run, lit: this.#lit, sprayedL: this.#sprayedL, windMS: this.#windMS, windFrom: this.#windFrom })
    if (this.#kept.length > KEEP) this.#drop(this.#kept.shift()!)
  }

  /** Shows the newest figures; in passing at most a few times a second. */
  #tell(inPassing = false): void {
    if (!this.#frame || this.#closed) return
    if (inPassing && performance.now() - this.#toldAt < TELL_MS) return
    this.#toldAt = performance.now()
    this.now.value = {
      tS: this.#frame.header.tS, lit: this.#lit, sprayedL: this.#sprayedL, windMS: this.#windMS,
      windFrom: this.#windFrom, events: this.#events, frame: this.#frame,
    }
  }
}
