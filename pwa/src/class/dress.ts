import { language } from '../words/language'
import { catalogueOf, say } from '../worker/sentences'

// What the server tells of scenes it tells by key, as the engine does; here the
// keys become sentences in the language of the page.

type Catalogue = Awaited<ReturnType<typeof catalogueOf>>

/** Where a sentence of the engine stands in a view: titles of scenes and texts of questions. */
const spoken = new Set(['title', 'text'])

/** A view with its sentences in words. What a person wrote is no key and stays as it is. */
export function dressed<T>(view: T, all: Catalogue): T {
  if (Array.isArray(view)) return view.map((one) => dressed(one as unknown, all)) as T
  if (typeof view !== 'object' || view === null) return view
  const fields = Object.entries(view).map(([name, value]) => [
    name,
    spoken.has(name) && typeof value === 'string' ? say(value, all) : dressed(value as unknown, all),
  ])
  return Object.fromEntries(fields) as T
}

/** The sentences of this page's language; none where they cannot be had, and keys then stand for themselves. */
export function sentences(): Promise<Catalogue> {
  return catalogueOf(language).catch(() => ({}))
}
