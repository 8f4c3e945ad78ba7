import { classes } from '../words/class'
import { language } from '../words/language'
import { refused } from '../words/refused'
import { Refused } from './ask'

// Here the server's own sentence is for the device that sent the events, which keeps them by itself.
const diskFull = 507

/** Why a call did not do what was wanted, for a person. The server speaks English: on another page what is not in its catalogue is said by its status. */
export function say(error: unknown, on = language): string {
  if (!(error instanceof Refused)) return classes.failed(error instanceof Error ? error.message : String(error))
  if (error.status === 0 || error.status === 503) return classes.noServer
  if (error.status === 429) return classes.tooMany
  const itsOwn = on === 'en' || (error.code && error.code in refused)
  const byStatus = itsOwn && error.status !== diskFull ? undefined : classes.failedBy[error.status]
  return byStatus ?? classes.failed(error.message)
}

/** The same for joining, where one answer stands for every wrong code. */
export function sayJoin(error: unknown): string {
  if (error instanceof Refused && error.code === 'sign_taken') return classes.signTaken
  const wrong = error instanceof Refused && [400, 403, 404, 409, 410].includes(error.status)
  return wrong ? classes.refused : say(error)
}
