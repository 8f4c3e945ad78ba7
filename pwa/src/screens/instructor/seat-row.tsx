import { Button } from '../../ui/button'
import { TextField } from '../../ui/text-field'
import { desk } from '../../words/class-desk'

/** A place as it stands in the editor. */
export interface SeatLine {
  key: string
  id?: string
  call_sign: string
  personnel: string
  /** A number is kept on the server; it is not sent here. */
  numbered?: boolean
  claimed?: boolean
}

/** One place of a roster: a line of a table whose heads stand over its first. */
export function SeatRow({ line, change }: { line: SeatLine; change(next: SeatLine | undefined): void }) {
  return (
    <li class="seat">
      <TextField label={desk.seatCallSign} value={line.call_sign} set={(call_sign) => change({ ...line, call_sign })} most={32} />
      <TextField label={desk.seatNumber} value={line.personnel} set={(personnel) => change({ ...line, personnel })} most={32} />
      <div class="row spread">
        <span class="small soft">{standing(line)}</span>
        <Button look="quiet" aria-label={desk.dropSeatNamed(line.call_sign)} onClick={() => change(undefined)}>
          {desk.dropSeat}
        </Button>
      </div>
    </li>
  )
}

/** Whether a number is kept for the place, and whether it has been claimed. */
function standing({ id, numbered, claimed }: SeatLine): string {
  if (!id) return ''
  return [numbered && desk.seatNumberKept, claimed ? desk.claimed : desk.unclaimed].filter(Boolean).join(', ')
}
