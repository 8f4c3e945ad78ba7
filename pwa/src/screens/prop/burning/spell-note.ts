import { box } from '../../../buildings/box'
import { openingName, spoken } from '../../../render'
import { burning } from '../../../words/burning'
import { prop } from '../../../words/prop'
import type { Entry } from './record'

/** What was logged at a burn: a move with how the opening then stood, or what was called out. */
export function spellNote(note: Entry['note']): string {
  if (note.what === 'lit') return burning.lit
  if (note.what === 'call') return burning.calls[note.call] ?? spoken(note.call)
  const opening = box.openings.find(({ id }) => id === note.opening)
  return burning.opening(opening ? openingName(opening) : spoken(note.opening), burning.state[note.open] ?? prop.openness(Math.round(100 * note.open)))
}
