import { openingName, spoken, spokenWithin } from '../../render'
import spanish from '../../generated/es/fuels.json'
import english from '../../generated/fuels.json'
import { inLanguage } from '../../words/language'
import { prop } from '../../words/prop'
import { trade } from '../../words/trade'
import { volume, windSpeed } from '../../words/units'
import type { Move, Scenario } from '../../wire.gen'
import type { Made } from './burn'
import { secondsAt } from './past'

// The moves of a fire as a person counts them: a slider that was dragged is one
// move, and so is a fuel laid on straw.

/** Moves of one thing within this time are one to the eye, s. Chosen by us. */
const ONE_MOVE_S = 2

/** One move as it is listed: where the moves of the engine that it is made of stand, and what it did in the end. */
export interface Listed { tS: number; indexes: number[]; name: string; opening: string | undefined; fuel: boolean }

export function listed(moves: readonly Made[], scenario: Scenario): Listed[] {
  const list: (Listed & { key: string })[] = []
  moves.forEach(({ step, move }, index) => {
    const key = move.opening ?? (move.fuel ? `fuel ${move.in}` : move.water_l === undefined ? 'wind' : `water ${index}`)
    const tS = secondsAt(step)
    const last = list.findLast((one) => one.key === key)
    if (last && tS - last.tS < ONE_MOVE_S) {
      last.indexes.push(index)
      last.name = nameOf(move, scenario)
    } else list.push({ key, tS, indexes: [index], name: nameOf(move, scenario), opening: move.opening, fuel: move.fuel !== undefined })
  })
  return list
}

const fuels: readonly { id: string; name: string }[] = inLanguage(english as { id: string; name: string }[], spanish)

export const fuelName = (id: string): string => fuels.find((fuel) => fuel.id === id)?.name ?? id

function nameOf(move: Move, { openings }: Scenario): string {
  const { made } = prop
  const room = spokenWithin(move.in ?? '')
  if (move.opening) {
    const opening = openings.find(({ id }) => id === move.opening)
    return made.opening(opening ? openingName(opening) : spoken(move.opening), prop.openness(Math.round(100 * (move.open ?? 0))))
  }
  if (move.fuel) return made.fuel(spoken(fuelName(move.fuel)), room)
  if (move.water_l !== undefined) return made.water(volume(move.water_l), room)
  return made.wind(windSpeed(move.wind_m_s ?? 0), trade.sides[move.wind_from ?? 'A'])
}
