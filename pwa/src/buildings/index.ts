import type { Scenario, Side } from '../wire.gen'
import { box } from './box'
import { bungalow, flats, twoStorey, workshop } from './houses'

/** What is laid in one go: its kinds, each with its mass in kg, the one that lights first in front. */
export interface Load { id: string; parts: readonly { fuel: string; kg: number }[]; simulatedOnly: boolean }

/** A building of our own, ready for the bench. */
export interface Building {
  id: string
  scenario: Scenario
  /** The sides that have something to show. */
  sides: readonly Side[]
  loads: readonly Load[]
  /** Where the first fire is laid. */
  seat: string
  /** Litres of one go with water. */
  waterL: number
  /** A prop to burn on the bench, and not a house. */
  small: boolean
}

// What is laid at a time is chosen by us so that one load makes a fire that
// grows, is short of air behind a nearly shut port, and burns out in minutes.
// Foam plastic is never burned in a live prop.
const boxLoads: Load[] = [
  { id: 'softwood', parts: [{ fuel: 'straw', kg: 0.05 }, { fuel: 'softwood', kg: 2 }], simulatedOnly: false },
  { id: 'straw', parts: [{ fuel: 'straw', kg: 0.12 }], simulatedOnly: false },
  { id: 'foam', parts: [{ fuel: 'polystyrene', kg: 0.05 }], simulatedOnly: true },
]

const houseLoads: Load[] = [
  { id: 'furnished', parts: [{ fuel: 'upholstered', kg: 40 }, { fuel: 'timber', kg: 60 }], simulatedOnly: true },
  { id: 'timber', parts: [{ fuel: 'straw', kg: 1 }, { fuel: 'timber', kg: 80 }], simulatedOnly: false },
  { id: 'paper', parts: [{ fuel: 'paper', kg: 8 }], simulatedOnly: false },
]

const workshopLoads: Load[] = [
  { id: 'pallets', parts: [{ fuel: 'paper', kg: 12 }, { fuel: 'timber', kg: 160 }], simulatedOnly: false },
  { id: 'paper', parts: [{ fuel: 'paper', kg: 30 }], simulatedOnly: false },
  { id: 'foam', parts: [{ fuel: 'polyurethane', kg: 15 }], simulatedOnly: true },
]

const allSides: readonly Side[] = ['A', 'B', 'C', 'D']
const house = { sides: allSides, loads: houseLoads, seat: 'living_room', waterL: 60, small: false }

export const buildings: readonly Building[] = [
  { id: 'box', scenario: box, sides: ['A'], loads: boxLoads, seat: 'lower_left', waterL: 0.1, small: true },
  { id: 'bungalow', scenario: bungalow, ...house },
  { id: 'two_storey', scenario: twoStorey, ...house },
  { id: 'flats', scenario: flats, ...house },
  { id: 'workshop', scenario: workshop, ...house, loads: workshopLoads, seat: 'workshop', waterL: 120 },
]
