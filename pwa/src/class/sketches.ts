import type { Scenario } from '../wire.gen'
import { keep, kept } from './keep'

// Moments of fires that were kept on this device, to be made scenes of a class.

export interface Sketch {
  id: string
  title: string
  scenario: Scenario
  moment_s: number
}

const key = 'lintel.sketches'
const most = 12 // chosen by us: enough for an evening at the bench

/** The kept ones, the newest first. */
export const sketches = (): Sketch[] => kept<Sketch[]>(key) ?? []

/** Keeps one, the oldest giving way to it; false where this browser keeps nothing. */
export function keepSketch(sketch: Omit<Sketch, 'id'>): boolean {
  const id = String(Date.now())
  keep(key, [{ id, ...sketch }, ...sketches()].slice(0, most))
  return sketches().some((one) => one.id === id)
}

export function forgetSketch(id: string): void {
  keep(key, sketches().filter((one) => one.id !== id))
}
