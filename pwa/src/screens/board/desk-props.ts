import type { ClassBoardView, ClassDoor } from '../../wire.gen'
import type { Lead } from './lead'

/** What every part of the board is given. */
export interface DeskProps {
  view: ClassBoardView
  /** The persons whose phone is on the line now. */
  here: readonly number[]
  door: ClassDoor | undefined
  away: boolean
  now(): number
  lead: Lead
}
