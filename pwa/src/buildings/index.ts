import type { Scenario, Side } from '../wire.gen'
import { box } from './box'
import { bungalow, twoStorey } from './houses'

/** A fuel as it is laid in one of our buildings: how much at a time, in kg, and on how much straw it is lit. */
export interface Load { fuel: string; kg: number; strawKg?: number; simulatedOnly: boolean }

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
}

// What is laid at a time is chosen by us so that one load makes a fire that
// grows, is short of air behind a nearly shut port, and burns out in minutes.
// Foam plastic is never burned in a live prop.
const boxLoads: Load[] = [
  { fuel: 'softwood', kg: 0.8, strawKg: 0.05, simulatedOnly: false },
  { fuel: 'straw', kg: 0.12, simulatedOnly: false },
  { fuel: 'polystyrene', kg: 0.05, simulatedOnly: true },
]

const houseLoads: Load[] = [
  { fuel: 'timber', kg: 80, strawKg: 1, simulatedOnly: false },
  { fuel: 'paper', kg: 8, simulatedOnly: false },
  { fuel: 'upholstered', kg: 40, simulatedOnly: true },
]

const allSides: readonly Side[] = ['A', 'B', 'C', 'D']

export const buildings: readonly Building[] = [
  { id: 'box', scenario: box, sides: ['A'], loads: boxLoads, seat: 'lower_left', waterL: 0.1 },
  { id: 'bungalow', scenario: bungalow, sides: allSides, loads: houseLoads, seat: 'living_room', waterL: 60 },
  { id: 'two_storey', scenario: twoStorey, sides: allSides, loads: houseLoads, seat: 'living_room', waterL: 60 },
]
