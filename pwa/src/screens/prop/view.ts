import type { FrameLook } from '../../render'
import type { Event, Side } from '../../wire.gen'
import type { Burn, Made } from './burn'
import { secondsAt } from './past'

// What the panels show of the bench, at the moment that its clock stands at.

/** One fire at the moment shown. */
export interface View {
  frame: FrameLook
  events: readonly Event[]
  /** Moves made so far in its whole past, also those after the moment shown. */
  moves: readonly Made[]
  lit: boolean
  sprayedL: number
  windMS: number
  windFrom: Side
  /** How far it has burned. */
  headS: number
}

/** What the panels show; replaced a few times a second, never once a frame. */
export interface Now {
  tS: number
  first: View
  second: View | undefined
  /** Where the second left the first. */
  branchS: number | undefined
  /** Fire that passed while the page was hidden and is being caught up with. */
  behindS: number
  /** Fire seconds to a second, where the device falls short of what was asked. */
  managesRate: number | undefined
}

/** One fire as it stood at a step. */
export function viewOf(burn: Burn, step: number): View {
  const made = burn.moves.filter((one) => one.step <= step).map(({ move }) => move)
  const { ambient } = burn.building.scenario
  const wind = made.findLast((move) => move.wind_m_s !== undefined)
  return {
    frame: burn.lookAt(step),
    events: burn.events.filter((event) => event.t_s <= secondsAt(step) + 1e-6),
    moves: burn.moves,
    lit: made.some((move) => move.fuel !== undefined),
    sprayedL: made.reduce((sum, move) => sum + (move.water_l ?? 0), 0),
    windMS: wind?.wind_m_s ?? ambient.wind_m_s ?? 0,
    windFrom: wind?.wind_from ?? ambient.wind_from ?? 'A',
    headS: secondsAt(burn.step),
  }
}
