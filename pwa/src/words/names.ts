import type { Opening } from '../wire.gen'
import { place } from './es/places'
import { language } from './language'
import { capital, lowerFirst } from './sentence'

/** A name for an opening or a compartment: in Spanish by a list, else from its id: "port_lower_left" is "Port lower left". */
export function spoken(id: string): string {
  const named = language === 'es' ? place(id) : undefined
  if (named !== undefined) return named
  const plain = id.replace(/[_-]+/g, ' ').trim()
  return capital(plain.replace(/\b(?:alpha|bravo|charlie|delta)\b/g, capital))
}

/** The same name within a sentence. */
export const spokenWithin = (id: string): string => lowerFirst(spoken(id))

export const openingName = (opening: Opening): string => spoken(opening.id)
