import { Refused } from '../../class/ask'
import { desk } from '../../words/class-desk'
import { language } from '../../words/language'

/** Why a roster was not taken, by the line of its table or the place in its list: the server's own sentence on a line is exact, and English. */
export function rosterRefused(error: unknown, on = language): string | undefined {
  const [, line, seat] = (error instanceof Refused && /^(?:line (\d+)|seats\[(\d+)\].*)$/.exec(error.where ?? '')) || []
  if (seat) return desk.seatRefused(Number(seat) + 1)
  return line && on !== 'en' ? desk.lineRefused(Number(line)) : undefined
}
