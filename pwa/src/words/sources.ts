import sources from '../generated/sources.json'
import { words } from './frame'

interface Source {
  id: string
  title: string
  publisher: string
  year?: string
  address?: string
  seen: string
}

/** Where rules and lessons come from, as content/sources lists them. */
export const allSources: readonly Source[] = sources

const byID = new Map(allSources.map((source) => [source.id, source]))

/** A source, or several parted by commas, as a person reads it. */
export function sourceName(ids: string): string {
  return ids
    .split(/[,;]\s*/)
    .filter(Boolean)
    .map((id) => {
      const found = words.plainSources[id] === undefined ? byID.get(id) : undefined
      return found ? [found.title, found.publisher, found.year].filter(Boolean).join(', ') : (words.plainSources[id] ?? id)
    })
    .join('; ')
}
