import type { Answer, Attempt, Contrast, Event, Finding, FormKind, Item, Move, Own, Progress, Readings, Scenario, Scene, Verdict } from '../wire.gen'
import { words } from '../words/frame'
import { UNSTARTED, type Calls, type FamilyInfo, type Method, type OpenedRun, type Problem, type Reply, type Version, type Unstarted } from './protocol'
import { language } from '../words/language'
import { catalogueOf, dress } from './sentences'

export type { FamilyInfo, OpenedRun, Version } from './protocol'

/** A mistake that the engine found in what it was given. */
export class EngineProblem extends Error implements Problem {
  readonly where: string
  readonly what: string
  readonly do: string
  constructor(problem: Problem) {
    super(sentence(problem))
    this.name = 'EngineProblem'
    this.where = problem.where
    this.what = problem.what
    this.do = problem.do
  }
}

/** One sentence for a person; why the engine did not start is told in words of the page. */
function sentence({ where, what, do: advice }: Problem): string {
  if (where !== UNSTARTED) return [where, what, advice].filter(Boolean).join(': ')
  console.warn('engine:', what)
  return words.app.unstarted[advice as Unstarted]
}

interface Waiting {
  resolve(value: unknown): void
  reject(error: EngineProblem): void
}

/** The part of a Worker that the client needs; tests bring their own. */
export interface Port {
  postMessage(message: unknown, transfer: Transferable[]): void
  onmessage: ((message: MessageEvent<Reply>) => unknown) | null
  onerror: ((event: ErrorEvent) => unknown) | null
}

/** Calls the engine in its worker. The worker starts with the first call, never before. */
export class EngineClient {
  #port: Port | undefined
  #next = 1
  readonly #waiting = new Map<number, Waiting>()
  readonly #start: () => Port

  constructor(start: () => Port) {
    this.#start = start
  }

  version = (): Promise<Version> => this.#call('version')
  read = (readings: Readings): Promise<Finding> => this.#said('read', readings)
  families = (): Promise<FamilyInfo[]> => this.#said('families')
  item = (family: string, seed: number, contrast?: Contrast, own?: Own): Promise<Item> => this.#said('item', family, seed, contrast, own)
  score = (answer: Answer): Promise<Verdict> => this.#said('score', answer)
  progress = (attempts: Attempt[]): Promise<Progress> => this.#call('progress', attempts)
  form = (kind: FormKind, device: string): Promise<Scene[]> => this.#call('form', kind, device)
  open = (scenario: Scenario): Promise<OpenedRun> => this.#call('open', scenario)
  move = (run: number, move: Move): Promise<null> => this.#call('move', run, move)
  /** What a fire did suddenly, in words. A fire whose sentences cannot be had burns on, its causes untold. */
  events = async (run: number): Promise<Event[]> => {
    const [events, all] = await Promise.all([this.#call('events', run), catalogueOf(language).catch(() => undefined)])
    return all ? dress.events(events, all) : events.map((event) => ({ ...event, cause: '' }))
  }
  readings = (run: number): Promise<Readings> => this.#call('readings', run)
  clone = (run: number): Promise<OpenedRun> => this.#call('clone', run)
  close = (run: number): Promise<null> => this.#call('close', run)

  /**
   * Runs a fire on and fills a frame. The array given is handed over to the
   * worker and comes back as the result: keep using the result, not the argument.
   */
  advance = (run: number, seconds: number, out: Float64Array): Promise<Float64Array> =>
    this.#call('advance', run, seconds, out)

  /** Calls for an answer that holds sentences, and puts them into words. */
  async #said<M extends keyof typeof dress>(method: M, ...args: Calls[M]['args']): Promise<Calls[M]['gives']> {
    const [answer, all] = await Promise.all([this.#call(method, ...args), catalogueOf(language)])
    return (dress[method] as (answer: unknown, all: unknown) => Calls[M]['gives'])(answer, all)
  }

  #call<M extends Method>(method: M, ...args: Calls[M]['args']): Promise<Calls[M]['gives']> {
    const port = (this.#port ??= this.#listen(this.#start()))
    const id = this.#next++
    const transfer = args.flatMap((arg) => (arg instanceof Float64Array ? [arg.buffer as ArrayBuffer] : []))
    return new Promise((resolve, reject) => {
      this.#waiting.set(id, { resolve: resolve as Waiting['resolve'], reject })
      port.postMessage({ id, method, args }, transfer)
    })
  }

  #listen(port: Port): Port {
    port.onmessage = ({ data }) => this.#settle(data)
    port.onerror = (event) => this.#failAll(event.message)
    return port
  }

  #settle(reply: Reply): void {
    const waiting = this.#waiting.get(reply.id)
    this.#waiting.delete(reply.id)
    if ('error' in reply) waiting?.reject(new EngineProblem(reply.error))
    else waiting?.resolve(reply.gives)
  }

  /** The worker itself is gone: every call fails, and the next one starts a fresh worker. */
  #failAll(what: string): void {
    const error = new EngineProblem({ where: 'engine', what: what || 'stopped', do: 'try again' })
    for (const waiting of this.#waiting.values()) waiting.reject(error)
    this.#waiting.clear()
    this.#port = undefined
  }
}

/** The one engine of this page. */
export const engine = new EngineClient(
  () => new Worker(new URL('./engine.worker.ts', import.meta.url), { type: 'module', name: 'engine' }) as Port,
)
