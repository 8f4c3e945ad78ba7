import { useState } from 'preact/hooks'
import { leave } from '../../class/phone'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { classes } from '../../words/class'

/** The way out of a class on this phone, asked once more. */
export function Leave() {
  const [sure, ask] = useState(false)
  return (
    <div class="stack">
      <Button look="quiet" onClick={() => ask(true)}>
        {classes.leaveClass}
      </Button>
      {sure && (
        <Dialog title={classes.leaveClass} close={() => ask(false)}>
          <p>{classes.leaveSure}</p>
          <Button wide onClick={leave}>
            {classes.leave}
          </Button>
          <Button look="main" wide onClick={() => ask(false)}>
            {classes.stay}
          </Button>
        </Dialog>
      )}
    </div>
  )
}
