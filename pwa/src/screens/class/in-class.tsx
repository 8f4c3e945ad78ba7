import { useEffect, useState } from 'preact/hooks'
import { store } from '../../local/store'
import { keepHeard, keptHeard, remember, type Membership } from '../../class/membership'
import { introduced } from '../../class/phone'
import type { Hello } from '../../class/socket'
import { useAwake } from '../../class/awake'
import { useLive } from '../../class/use-live'
import { Page } from '../../ui/page'
import { classes } from '../../words/class'
import { engine } from '../../worker/client'
import type { Version } from '../../worker/protocol'
import { Leave } from './leave'
import { Room } from './room'
import { UpdateFirst } from './update-first'

const hello = async (): Promise<Hello> => {
  const { device, secret } = await introduced()
  return { role: 'phone', device, secret }
}

/** A phone that is in a class: it follows the live line, and what was last heard stands while that is away. */
export function InClass({ member }: { member: Membership }) {
  const [kept] = useState(keptHeard)
  const { heard, line, now } = useLive(member.id, hello, kept)
  const places = heard.places ?? member.places
  useAwake()
  useEffect(() => {
    if (heard.seq > 0) keepHeard(heard)
    if (heard.places) remember({ ...member, places: heard.places })
  }, [heard])
  useEffect(() => {
    // What could not be sent while away goes now, not at the end of a long wait.
    if (line === 'open') void store().then((opened) => opened.syncNow())
  }, [line])
  const ours = useOurVersion()

  if (line === 'refused') return <Gone why={classes.refusedLine} />
  if (places.length === 0) return <Gone why={classes.movedAway} />
  if (places.every(({ removed }) => removed)) return <Gone why={classes.gone} />
  if (ours && (ours.engine !== member.engine || ours.content !== member.content)) return <UpdateFirst theirs={member} ours={ours} />
  if (!heard.phone) return <Opening away={line === 'away'} />
  return <Room view={heard.phone} places={places.filter(({ removed }) => !removed)} line={line} now={now} />
}

/** Which versions this phone runs, once its engine has said so. */
function useOurVersion() {
  const [ours, setOurs] = useState<Version>()
  useEffect(() => void engine.version().then(setOurs, () => {}), [])
  return ours
}

function Opening({ away }: { away: boolean }) {
  return (
    <Page title={classes.title}>
      <div class="stack stack-wide">
        <p role="status">{away ? classes.away : classes.joining}</p>
        <Leave />
      </div>
    </Page>
  )
}

function Gone({ why }: { why: string }) {
  return (
    <Page title={classes.title}>
      <div class="stack stack-wide">
        <p role="alert">{why}</p>
        <Leave />
      </div>
    </Page>
  )
}
