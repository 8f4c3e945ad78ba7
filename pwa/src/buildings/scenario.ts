import type { Move, Scenario } from '../wire.gen'

/** A scenario file as JSON gives it: its words are plain strings. */
type Read<T> = T extends readonly (infer E)[] ? Read<E>[] : T extends string ? string : T extends object ? { [K in keyof T]: Read<T[K]> } : T

/** A building of content/buildings, cold and untouched, and the moves that its file plays. */
export interface Built { scenario: Scenario; moves: readonly Move[] }

/** Takes a scenario file apart; that it is one, content/buildings_test.go checks. */
export function built(file: Read<Scenario>): Built {
  const { moves = [], ...scenario } = file as Scenario
  return { scenario, moves }
}
