import { language } from './language'

// The cautions as content/cautions has them, each with the places where it stands.

export interface CautionText {
  id: string
  text: string
  where: string[]
  always?: boolean
  sources: string[]
}

const book = await (language === 'es' ? import('../generated/es/cautions.json') : import('../generated/cautions.json'))

export const cautions: readonly CautionText[] = (book.default as { cautions: CautionText[] }).cautions

/** Shown by the caution at the head of a screen and by the label of the fire model, wherever they belong. */
const shownElsewhere = new Set(['training_only', 'not_an_incident', 'not_validated'])

/** What stands at a place: first who decides, then the rest. */
export function cautionsAt(place: string): CautionText[] {
  const here = cautions.filter(({ id, where }) => !shownElsewhere.has(id) && (where.includes(place) || where.includes('all')))
  return here.toSorted((a, b) => Number(b.where.includes('all')) - Number(a.where.includes('all')))
}
