import { useState } from 'preact/hooks'
import { Refused } from '../../class/ask'
import { audit, changeInstructor, instructors, invite, newPhrase } from '../../class/desk'
import { Button } from '../../ui/button'
import { TextField } from '../../ui/text-field'
import { desk } from '../../words/class-desk'
import type { Deed, Instructor, InstructorRole } from '../../wire.gen'
import { date } from './classes'
import { spellDeed } from './deed'
import { who } from './state'
import { useDoing, useLoaded } from './use-loaded'

/** Who may lead here, one's own pass phrase, and for a chief the invitations and who did what. */
export function Instructors() {
  const { value, failed, again } = useLoaded(instructors)
  const chief = who.value?.role === 'chief'
  return (
    <div class="desk-two">
      <div class="stack stack-wide">
        <section class="stack">
          <h2>{desk.instructors}</h2>
          {failed && <p role="alert">{failed}</p>}
          <ul class="desk-list">
            {value?.instructors.map((one) => (
              <Line key={one.id} one={one} chief={chief} changed={again} />
            ))}
          </ul>
        </section>
        {chief && <Invite />}
        <OwnPhrase />
      </div>
      {chief && <Audit />}
    </div>
  )
}

function Line({ one, chief, changed }: { one: Instructor; chief: boolean; changed(): void }) {
  const { failed, doing, run } = useDoing()
  const set = (role: InstructorRole, out: boolean) => void run(() => changeInstructor(one.id, role, out).then(changed))
  const other: InstructorRole = one.role === 'chief' ? 'instructor' : 'chief'
  return (
    <li>
      <div>
        <strong>{one.call_sign}</strong>
        <p class="small soft">{one.shut_out ? desk.shutOut : desk.roles[one.role]}</p>
        {failed && <p role="alert">{failed}</p>}
      </div>
      {chief && one.id !== who.value?.id && (
        <span class="row">
          <Button look="quiet" disabled={doing} onClick={() => set(other, one.shut_out)}>
            {other === 'chief' ? desk.makeChief : desk.makeInstructor}
          </Button>
          <Button look="quiet" disabled={doing} onClick={() => set(one.role, !one.shut_out)}>
            {one.shut_out ? desk.letIn : desk.shutOutNow}
          </Button>
        </span>
      )}
    </li>
  )
}

function Invite() {
  const [code, setCode] = useState<string>()
  const { failed, doing, run } = useDoing()
  const make = (role: InstructorRole) => void run(async () => setCode((await invite(role)).code))
  return (
    <section class="stack">
      <p>{desk.inviteWhy}</p>
      <div class="row">
        <Button disabled={doing} onClick={() => make('instructor')}>
          {desk.inviteNow(desk.roles.instructor)}
        </Button>
        <Button disabled={doing} onClick={() => make('chief')}>
          {desk.inviteNow(desk.roles.chief)}
        </Button>
      </div>
      {failed && <p role="alert">{failed}</p>}
      {code && (
        <div role="status">
          <p class="invite-code">{desk.inviteCode(code)}</p>
          <p class="small soft">{desk.inviteUse}</p>
        </div>
      )}
    </section>
  )
}

function OwnPhrase() {
  const [old, setOld] = useState('')
  const [next, setNext] = useState('')
  const [changed, setChanged] = useState(false)
  const { failed, doing, run } = useDoing((error) => (error instanceof Refused && error.where === 'new' ? desk.phraseRefused : undefined))
  const change = async () => {
    await newPhrase(old, next)
    setChanged(true)
    setOld('')
    setNext('')
  }
  return (
    <form
      class="stack"
      onSubmit={(event) => {
        event.preventDefault()
        void run(change)
      }}
    >
      <h2>{desk.ownPhrase}</h2>
      <TextField label={desk.oldPhrase} value={old} set={setOld} type="password" autoComplete="current-password" />
      <TextField label={desk.newPhrase} value={next} set={setNext} type="password" hint={desk.phraseHint} autoComplete="new-password" />
      {failed && <p role="alert">{failed}</p>}
      {changed && <p role="status">{desk.phraseChanged}</p>}
      <div>
        <Button submit disabled={doing || !old || !next}>
          {desk.changePhrase}
        </Button>
      </div>
    </form>
  )
}

function Audit() {
  const first = useLoaded(audit)
  const [more, setMore] = useState<readonly Deed[]>([])
  const [before, setBefore] = useState<number>()
  const { doing, run } = useDoing()
  const next = more.length ? before : first.value?.next
  const load = async () => {
    const page = await audit(next)
    setMore([...more, ...page.deeds])
    setBefore(page.next)
  }
  return (
    <section class="stack">
      <h2>{desk.audit}</h2>
      {first.failed && <p role="alert">{first.failed}</p>}
      <ul class="desk-list deeds">
        {[...(first.value?.deeds ?? []), ...more].map((deed) => (
          <li key={deed.seq}>
            <span class="small soft">{date(deed.at_ms)}</span>
            <span>{spellDeed(deed)}</span>
          </li>
        ))}
      </ul>
      {next && (
        <div>
          <Button disabled={doing} onClick={() => void run(load)}>
            {desk.auditMore}
          </Button>
        </div>
      )}
    </section>
  )
}
