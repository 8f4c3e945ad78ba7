import type { Scenario } from '../../wire.gen'

// The buildings that the app draws: every scenario in src/buildings.
const files = import.meta.glob<Record<string, unknown>>('../../buildings/*.ts', { eager: true })

/** Buildings whose inside is known. */
export const known: readonly { name: string; scenario: Scenario }[] = Object.values(files)
  .flatMap((file) => Object.values(file))
  .filter(isScenario)
  .map((scenario) => ({ name: scenario.name ?? '', scenario }))

function isScenario(value: unknown): value is Scenario {
  return typeof value === 'object' && value !== null && 'compartments' in value && 'openings' in value && 'end_s' in value
}
