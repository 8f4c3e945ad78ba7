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

/** One place of a roster. */
export function SeatRow({ line, change }: { line: SeatLine; change(next: SeatLine | undefined): void }) {
  return (
    <li class="seat">
      <TextField label={desk.seatCallSign} value={line.call_sign} set={(call_sign) => change({ ...line, call_sign })} most={32} />
      <TextField
        label={desk.seatNumber}
        value={line.personnel}
        set={(personnel) => change({ ...line, personnel })}
        most={32}
        {...(line.numbered && { hint: desk.seatNumberKept })}
      />
      <div class="row">
        {line.id && <span class="small soft">{line.claimed ? desk.claimed : desk.unclaimed}</span>}
        <Button look="quiet" aria-label={desk.dropSeatNamed(line.call_sign)} onClick={() => change(undefined)}>
          {desk.dropSeat}
        </Button>
      </div>
    </li>
  )
}
