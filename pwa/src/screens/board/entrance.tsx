import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { classes } from '../../words/class'
import { board } from '../../words/class-board'
import { Ending, isLast } from './controls'
import type { DeskProps } from './desk-props'
import { Handing } from './handing'
import { HowToJoin } from './how-to-join'

type Open = 'join' | 'hand' | undefined

/** The ways into the class and out to the wall: each opens a sheet over the board. */
export function Entrance({ view, door, lead }: DeskProps) {
  const [open, setOpen] = useState<Open>()
  const close = () => setOpen(undefined)
  return (
    <div class="row entrance">
      {door && view.step !== 'ended' && <Button onClick={() => setOpen('join')}>{board.doorTitle}</Button>}
      {!lead.key && (
        <a class="button button-plain" href={`/instructor/class/${lead.id}`}>
          {board.toReport}
        </a>
      )}
      {!lead.key && view.step !== 'ended' && <Button onClick={() => setOpen('hand')}>{board.handOver}</Button>}
      {view.step !== 'ended' && !isLast(view) && <Ending lead={lead} look="quiet" />}
      {open === 'join' && door && (
        <Dialog title={classes.joinTo(view.title)} close={close}>
          <HowToJoin view={view} door={door} lead={lead} />
        </Dialog>
      )}
      {open === 'hand' && (
        <Dialog title={board.handOver} close={close}>
          <Handing id={lead.id} />
        </Dialog>
      )}
    </div>
  )
}
