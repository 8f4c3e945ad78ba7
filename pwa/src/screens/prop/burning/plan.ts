import { burning } from '../../../words/burning'
import type { Opening } from '../../../wire.gen'

// The plan of a live burn: openings of the box, and what to ask before each. It
// leads the fire always an inlet: no step leaves the box shut, so none can open a
// box that was shut in. The sequence and the questions are ours, after common
// practice (no source).

/** A move, and the question of words/en/burning that goes before it. */
export interface Step { opening: Opening['id']; open: number; ask: keyof typeof burning.asks }

/** The box as it stands when the flame is put to the fuel. */
export const STANDS: Readonly<Record<string, number>> = { port_lower_left: 1 }

export const plan: readonly Step[] = [
  { opening: 'port_lower_left', open: 0.5, ask: 'half_shut' },
  { opening: 'port_lower_left', open: 1, ask: 'full_again' },
  { opening: 'floor_hole', open: 1, ask: 'floor_hole' },
  { opening: 'port_upper_left', open: 1, ask: 'upper_port' },
  { opening: 'door_lower', open: 1, ask: 'inner_door' },
  { opening: 'port_lower_right', open: 1, ask: 'neighbour' },
  { opening: 'roof_hatch', open: 1, ask: 'roof_hatch' },
  { opening: 'door_upper', open: 1, ask: 'upper_door' },
  { opening: 'ceiling_hatch', open: 1, ask: 'ceiling_hatch' },
]

/** Openings of the box that lead outside and stand open after each step, as the plan goes. */
export function waysOut(steps: readonly Omit<Step, 'ask'>[], openings: readonly Opening[]): number[] {
  const stands: Record<string, number> = { ...STANDS }
  return steps.map(({ opening, open }) => {
    stands[opening] = open
    return openings.filter(({ id, to, kind }) => to === 'outside' && kind === 'port' && (stands[id] ?? 0) >= 0.5).length
  })
}
