import { degrees } from '../../words/units'
import { COMPARTMENT, COMPARTMENT_LENGTH, FRAME_HEADER, FRAME_HEADER_LENGTH, OPENING, OPENING_LENGTH } from '../../wire.gen'
import type { Burn } from './burn'
import { plane } from './differences'
import { secondsAt } from './past'

// The past of one or two fires as columns of numbers over time, for a curve and
// for its table, in the units of the page.

export const CURVES = ['heat', 'temperature', 'oxygen', 'plane'] as const
export type Curve = (typeof CURVES)[number]

/** One line of a curve: which fire, and of the temperatures which layer. */
export interface Line { fire: 'first' | 'second'; layer: 'upper' | 'lower' | undefined; values: (number | null)[] }

export interface Series { tS: number[]; lines: Line[] }

/** What of the building the curves show. */
export interface Shown { room: number; opening: number; compartments: number }

/** Points of a curve at most: about one to two pixels of a phone. Chosen by us. */
const MOST_POINTS = 400
const FINEST_S = 0.5

/** Times at even distances from 0 to the newest moment. */
export function times(newestS: number, most = MOST_POINTS, finest = FINEST_S): number[] {
  const apart = Math.max(finest, Math.ceil(newestS / most / finest) * finest)
  const count = Math.floor(newestS / apart + 1e-9)
  const list = Array.from({ length: count + 1 }, (_, k) => k * apart)
  if (newestS - list.at(-1)! > 1e-6) list.push(newestS)
  return list
}

/** A curve of the fires; the second one begins where it left the first. */
export function series(curve: Curve, burns: readonly Burn[], shown: Shown, branchS: number | undefined, tS: number[]): Series {
  const lines = burns.flatMap((burn, k): Line[] => {
    const [fire, fromS] = k === 0 ? (['first', 0] as const) : (['second', branchS ?? 0] as const)
    const line = (layer: Line['layer']) => ({ fire, layer, values: column(burn, tS, fromS, valueOf(curve, layer, shown)) })
    return curve === 'temperature' ? [line('upper'), line('lower')] : [line(undefined)]
  })
  return { tS, lines }
}

type Value = (frame: Float32Array) => number | null

function column({ past, step }: Burn, tS: readonly number[], fromS: number, value: Value): (number | null)[] {
  let at = 0
  return tS.map((t) => {
    while (at + 1 < past.steps.length && secondsAt(past.steps[at + 1]!) <= t + 1e-6) at++
    const frame = past.frames[at]
    return frame && t >= fromS - 1e-6 && t <= secondsAt(step) + 1e-6 ? value(frame) : null
  })
}

function valueOf(curve: Curve, layer: Line['layer'], { room, opening, compartments }: Shown): Value {
  const inRoom = (place: number) => FRAME_HEADER_LENGTH + room * COMPARTMENT_LENGTH + place
  const ofLayer = (value: Value): Value => (frame) => (Number.isFinite(frame[inRoom(COMPARTMENT.InterfaceM)]!) ? value(frame) : null)
  const atOpening = FRAME_HEADER_LENGTH + compartments * COMPARTMENT_LENGTH + opening * OPENING_LENGTH
  switch (curve) {
    case 'heat': return (frame) => frame[FRAME_HEADER.HRRKW]!
    case 'temperature': return layer === 'upper'
      ? ofLayer((frame) => degrees(frame[inRoom(COMPARTMENT.UpperC)]!))
      : (frame) => degrees(frame[inRoom(COMPARTMENT.LowerC)]!)
    case 'oxygen': return ofLayer((frame) => 100 * frame[inRoom(COMPARTMENT.O2Upper)]!)
    case 'plane': return (frame) => plane({ neutralPlane: frame[atOpening + OPENING.NeutralPlane]!, flow: frame[atOpening + OPENING.Flow]! }) ?? null
  }
}
