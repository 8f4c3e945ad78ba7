import type { ComponentType } from 'preact'
import type { ScreenName } from '../words/en'

// Every folder in screens with an index.tsx is a screen, loaded when first
// opened. Home is in the first bundle and not in this table.
const modules = import.meta.glob<{ default: ComponentType }>(['../screens/*/index.tsx', '!../screens/home/*'])

/** The screens in the order of the navigation, each with the address that shows it. */
export const screens: { name: ScreenName; at: string; load: () => Promise<{ default: ComponentType }> }[] = []

for (const [name, folder, at] of [
  ['sizeUp', 'sizeup', 'size-up'],
  ['prop', 'prop', 'prop'],
  ['drill', 'drill', 'drill'],
  ['book', 'book', 'field-book'],
  ['log', 'log', 'log'],
] as const) {
  const load = modules[`../screens/${folder}/index.tsx`]
  if (load) screens.push({ name, at, load })
}
