import type { Opening } from '../wire.gen'
import { place } from '../words/es/places'
import { language } from '../words/language'

/** A name for an opening or a compartment: in Spanish by a list, else from its id: "port_lower_left" is "Port lower left". */
export function spoken(id: string): string {
  const named = language === 'es' ? place(id) : undefined
  if (named !== undefined) return named
  const plain = id.replace(/[_-]+/g, ' ').trim()
  return plain.charAt(0).toUpperCase() + plain.slice(1)
}

/** The same name within a sentence: only its first letter is small, as "Bravo" is a name. */
export function spokenWithin(id: string): string {
  const name = spoken(id)
  return name.charAt(0).toLowerCase() + name.slice(1)
}

export const openingName = (opening: Opening): string => spoken(opening.id)
