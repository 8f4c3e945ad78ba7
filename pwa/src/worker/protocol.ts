import type { Answer, Attempt, Contrast, Event, Finding, FormKind, Item, Move, Own, Progress, Readings, Scenario, Scene, Verdict } from '../wire.gen'

// What the page and the engine worker say to each other. Every call is one of
// the functions that pwa/wasm puts on the global `lintel`.

/** Which engine and content are loaded. */
export interface Version {
  engine: string
  content: string
}

/** A family of drill items, as listed. */
export interface FamilyInfo {
  id: string
  title: string
  kind: Item['kind']
  lesson: string
  /** What a which_of_two family can set apart. */
  pairs: Contrast[]
}

/** A fire that was opened in the worker; frames hold frameLength numbers. */
export interface OpenedRun {
  run: number
  compartments: string[]
  openings: string[]
  frameLength: number
}

/** The engine, as the page calls it. */
export interface Calls {
  version: { args: []; gives: Version }
  read: { args: [Readings]; gives: Finding }
  families: { args: []; gives: FamilyInfo[] }
  item: { args: [family: string, seed: number, contrast?: Contrast, own?: Own]; gives: Item }
  score: { args: [Answer]; gives: Verdict }
  progress: { args: [Attempt[]]; gives: Progress }
  form: { args: [FormKind, device: string]; gives: Scene[] }
  open: { args: [Scenario]; gives: OpenedRun }
  advance: { args: [run: number, seconds: number, out: Float64Array]; gives: Float64Array }
  move: { args: [run: number, move: Move]; gives: null }
  events: { args: [run: number]; gives: Event[] }
  readings: { args: [run: number]; gives: Readings }
  clone: { args: [run: number]; gives: OpenedRun }
  close: { args: [run: number]; gives: null }
}

export type Method = keyof Calls

/** Stands for `where` when the engine itself did not start; `what` is for the console, `do` tells why. */
export const UNSTARTED = 'unstarted'
export type Unstarted = 'not_here' | 'no_webassembly'

/** Where a mistake is, what it is, and what to do about it: engine.Problem. */
export interface Problem {
  where: string
  what: string
  do: string
}

export interface Request {
  id: number
  method: Method
  args: unknown[]
}

export type Reply = { id: number; gives: unknown } | { id: number; error: Problem }
