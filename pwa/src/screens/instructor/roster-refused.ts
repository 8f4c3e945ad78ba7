import { Refused } from '../../class/ask'
import { desk } from '../../words/class-desk'
import { language } from '../../words/language'

/** Why a roster was not taken, by the line of its table or the place in its list: the server's own sentence on a line is exact, and English. */
export function rosterRefused(error: unknown, on = language): string | undefined {
  const [, line, seat] = (error instanceof Refused && /^(?:line (\d+)|seats\[(\d+)\].*)$/.exec(error.where ?? '')) || []
  if (seat) return desk.seatRefused(Number(seat) + 1)
  if (!line || on === 'en') return undefined
  const why = desk.lineRefused[(error as Refused).code ?? '']
  return why && desk.lineSays(Number(line), why)
}
