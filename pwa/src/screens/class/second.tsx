import { useState } from 'preact/hooks'
import { joinAsSecond } from '../../class/phone'
import { sayJoin } from '../../class/say'
import { Button } from '../../ui/button'
import { TextField } from '../../ui/text-field'
import { classes } from '../../words/class'

/** Lets a second person join on this phone. */
export function Second() {
  const [open, setOpen] = useState(false)
  const [callSign, setCallSign] = useState('')
  const [failed, setFailed] = useState<string>()
  const go = async (event: Event) => {
    event.preventDefault()
    await joinAsSecond(callSign.trim()).catch((error: unknown) => setFailed(sayJoin(error)))
  }
  if (!open) return <Button onClick={() => setOpen(true)}>{classes.second}</Button>
  return (
    <form class="stack" onSubmit={(event) => void go(event)}>
      <p>{classes.secondWhy}</p>
      <TextField label={classes.callSign} value={callSign} set={setCallSign} most={32} />
      {failed && <p role="alert">{failed}</p>}
      <Button submit wide disabled={callSign.trim() === ''}>
        {classes.join}
      </Button>
    </form>
  )
}
