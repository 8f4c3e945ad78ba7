import { buildings } from '../../buildings'
import { inLanguage } from '../../words/language'
import { prop } from '../../words/prop'
import type { Scenario } from '../../wire.gen'

/** Buildings whose inside is known: our own, as the bench burns them. */
export const known: readonly { name: string; scenario: Scenario }[] = buildings.map(({ id, scenario }) => ({
  name: inLanguage<string>(scenario.name ?? id, prop.buildings[id] ?? id),
  scenario,
}))
