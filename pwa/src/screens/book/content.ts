import measureList from '../../generated/measures.json'
import { language } from '../../words/language'
import type { Hazard, ItemKind, Regime, Stage } from '../../wire.gen'

// The text of the field book as the content compiler wrote it. The shapes are
// those of content/fieldbook and engine/infer. Only the page's own language is
// fetched.
const { glossary, lessonList, ruleList, sourceTexts } = await (language === 'es' ? import('./texts.es') : import('./texts.en'))

export interface Lesson {
  id: string
  order: number
  title: string
  idea: string
  body: string[]
  look: string[]
  misleads: string[]
  mistake: string
  terms?: string[]
  sources: string[]
  try: { kind?: ItemKind; prop?: boolean; do: string }
}

export interface Term {
  id: string
  term: string
  aliases?: string[]
  meaning: string
  used: string
  see?: string[]
  sources: string[]
}

export interface Rule {
  id: string
  text: string
  supports?: Stage[]
  opposes?: Stage[]
  regime?: Regime
  hazards?: Hazard[]
  look_alike?: string
  next_look?: string
  counter_sign: string
  sources: string[]
}

export interface Measure {
  rule: string
  fires: number
  hits: number
  share: number
  base: number
}

export const lessons = (lessonList as unknown as Lesson[]).toSorted((a, b) => a.order - b.order)
export const terms = (glossary.terms as Term[]).toSorted((a, b) => a.term.localeCompare(b.term, language))
export const rules = ruleList as unknown as Rule[]

/** How far a source was read, and what else of it is said in the page's language; English stands with the source itself. */
export const sourceText = (id: string): { seen?: string; title?: string; publisher?: string } => (sourceTexts as Record<string, object>)[id] ?? {}

const measures = new Map((measureList as Measure[]).map((one) => [one.rule, one]))
export const measureOf = (rule: string): Measure | undefined => measures.get(rule)

const termByID = new Map(terms.map((one) => [one.id, one]))
export const termOf = (id: string): Term | undefined => termByID.get(id)

/** Whether a text holds every word that was searched for. */
export function holds(query: string, ...texts: (string | undefined)[]): boolean {
  const text = texts.join(' ').toLowerCase()
  return query
    .toLowerCase()
    .split(/\s+/)
    .every((word) => text.includes(word))
}
