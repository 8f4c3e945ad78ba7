import { expect, test } from 'vitest'

// Two catalogues, one for each language, with the same keys: and what stands in
// the Spanish one is Spanish.

type Words = Record<string, unknown>
const english = import.meta.glob<Words>('./en/*.ts', { eager: true })
const spanish = import.meta.glob<Words>('./es/*.ts', { eager: true })

/** The same in both languages: our name, names of sides, trade words and units. */
const alike = new Set([
  'Lintel', 'Auto', 'Instructor', 'No', 'Bravo', 'Charlie', 'Delta', 'Backdraft', 'Flashover',
  'kW', '+1 s', 'min:s',
])

/** Every text of a catalogue by its path; a text with slots stands as its source. */
function texts(value: unknown, path = ''): [string, string][] {
  if (typeof value === 'string') return [[path, value]]
  if (typeof value === 'function') return [[path, '()']]
  if (typeof value !== 'object' || value === null) return []
  return Object.entries(value).flatMap(([key, inner]) => texts(inner, path ? `${path}.${key}` : key))
}

for (const [file, words] of Object.entries(english)) {
  const name = file.slice('./en/'.length, -'.ts'.length)
  test(`${name} has the same keys in both languages, and Spanish in Spanish`, () => {
    const own = new Map(texts(spanish[`./es/${name}.ts`]))
    const theirs = new Map(texts(words))
    expect(theirs.size).toBeGreaterThan(0)
    expect([...own.keys()].toSorted()).toEqual([...theirs.keys()].toSorted())
    const same = [...own].filter(([key, text]) => text !== '()' && /\p{L}/u.test(text) && theirs.get(key) === text && !alike.has(text))
    expect(same.map(([key, text]) => `${name}.${key}: ${text}`)).toEqual([])
  })
}
