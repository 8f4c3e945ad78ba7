import type { ComponentType } from 'preact'
import type { ScreenName } from '../words/frame'

// Every folder in screens with an index.tsx is a screen, loaded when first
// opened. Home is in the first bundle and not in this table.
const modules = import.meta.glob<{ default: ComponentType }>(['../screens/*/index.tsx', '!../screens/home/*'])

type Load = () => Promise<{ default: ComponentType }>

/** The screens in the order of the navigation, each with the address that shows it. */
export const screens: { name: ScreenName; at: string; load: Load }[] = []

/** Screens that one comes to from Class, or by a code: they stand in no navigation. */
export const inner: { at: string; load: Load }[] = []

for (const [name, folder, at] of [
  ['sizeUp', 'sizeup', 'size-up'],
  ['prop', 'prop', 'prop'],
  ['drill', 'drill', 'drill'],
  ['class', 'class', 'class'],
  ['book', 'book', 'field-book'],
  ['log', 'log', 'log'],
] as const) {
  const load = modules[`../screens/${folder}/index.tsx`]
  if (load) screens.push({ name, at, load })
}

for (const at of ['instructor', 'board', 'projector']) {
  const load = modules[`../screens/${at}/index.tsx`]
  if (load) inner.push({ at, load })
}
