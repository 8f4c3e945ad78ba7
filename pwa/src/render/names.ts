import type { Opening } from '../wire.gen'

/** A name for an opening or a compartment, made from its id: "port_lower_left" is "Port lower left". */
export function spoken(id: string): string {
  const plain = id.replace(/[_-]+/g, ' ').trim()
  return plain.charAt(0).toUpperCase() + plain.slice(1)
}

export const openingName = (opening: Opening): string => spoken(opening.id)
