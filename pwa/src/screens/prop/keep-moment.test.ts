import { expect, test } from 'vitest'
import type { Scenario } from '../../wire.gen'
import { sketched } from './keep-moment'

test('a kept moment holds what was done up to it, each at its own time', () => {
  const scenario = { v: 1, end_s: 3600, openings: [] } as unknown as Scenario
  const moves = [
    { step: 0, move: { t_s: 0, fuel: 'straw', mass_kg: 0.1, in: 'room' } },
    { step: 1201, move: { t_s: 0, opening: 'door', open: 1, over_s: 0.5 } },
    { step: 4000, move: { t_s: 0, opening: 'door', open: 0 } },
  ]
  const kept = sketched(scenario, moves, 90)
  expect(kept.moves).toEqual([
    { t_s: 0, fuel: 'straw', mass_kg: 0.1, in: 'room' },
    { t_s: 60.05, opening: 'door', open: 1, over_s: 0.5 },
  ])
  expect(scenario.moves).toBeUndefined()
})
