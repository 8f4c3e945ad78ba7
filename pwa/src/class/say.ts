import { classes } from '../words/class'
import { language } from '../words/language'
import { Refused } from './ask'

/** Why a call did not do what was wanted, for a person. The server speaks English; on another page its status is put into words. */
export function say(error: unknown, on = language): string {
  if (!(error instanceof Refused)) return classes.failed(error instanceof Error ? error.message : String(error))
  if (error.status === 0 || error.status === 503) return classes.noServer
  if (error.status === 429) return classes.tooMany
  return (on === 'en' ? undefined : classes.failedBy[error.status]) ?? classes.failed(error.message)
}

/** The same for joining, where one answer stands for every wrong code. */
export function sayJoin(error: unknown): string {
  const wrong = error instanceof Refused && [400, 403, 404, 409, 410].includes(error.status)
  return wrong ? classes.refused : say(error)
}
