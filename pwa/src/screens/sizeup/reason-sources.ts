import type { Evidence } from '../../wire.gen'

/** The sources that reasons cite, each once, in the order in which they are first cited. A title may hold a comma: they are parted by semicolons. */
export function sourcesOf(evidence: readonly Pick<Evidence, 'source'>[]): string[] {
  return [...new Set(evidence.flatMap(({ source }) => source.split(/;\s*/).filter(Boolean)))]
}
