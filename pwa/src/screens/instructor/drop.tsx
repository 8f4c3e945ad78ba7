import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { desk } from '../../words/class-desk'

interface DropProps {
  name: string
  /** What goes with it, and what stays. */
  why: string
  disabled: boolean
  drop(): void
}

/** Deletes what an instructor keeps, asked once more: it cannot be had back. */
export function Drop({ name, why, disabled, drop }: DropProps) {
  const [sure, ask] = useState(false)
  const now = () => {
    ask(false)
    drop()
  }
  return (
    <>
      <Button look="quiet" disabled={disabled} onClick={() => ask(true)}>
        {name}
      </Button>
      {sure && (
        <Dialog title={name} close={() => ask(false)}>
          <p>{why}</p>
          <Button wide onClick={now}>
            {desk.dropNow}
          </Button>
          <Button look="main" wide onClick={() => ask(false)}>
            {desk.keepIt}
          </Button>
        </Dialog>
      )}
    </>
  )
}
