import { buildings } from '../../buildings'
import type { Scenario } from '../../wire.gen'

/** Buildings whose inside is known: our own, as the bench burns them. */
export const known: readonly { name: string; scenario: Scenario }[] = buildings.map(({ id, scenario }) => ({
  name: scenario.name ?? id,
  scenario,
}))
