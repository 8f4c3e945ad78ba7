import { useEffect } from 'preact/hooks'
import { place } from '../../app/router'
import { Button } from '../../ui/button'
import { Page } from '../../ui/page'
import { desk } from '../../words/class-desk'
import { Classes } from './classes'
import { Gate } from './gate'
import { Instructors } from './instructors'
import { ClaimSheets } from './claim-sheets'
import { Report } from './report'
import { Rosters } from './rosters'
import { OneRoster } from './one-roster'
import { Sets } from './sets'
import { OneSet } from './one-set'
import { Sheets } from './sheets'
import { look, out, who } from './state'
import './instructor.css'

/** The instructor's desk: sign in, then rosters, sets, classes and their reports. */
export default function Instructor() {
  useEffect(() => void look(), [])
  return who.value ? <Desk /> : <Gate />
}

function Desk() {
  const [part = 'classes', id, more] = place.value.rest
  if (part === 'class' && id) return more === 'sheets' ? <Sheets id={id} /> : <Report key={id} id={id} />
  if (part === 'sets' && id) return <OneSet key={id} id={id} />
  if (part === 'rosters' && id) return more === 'codes' ? <ClaimSheets id={id} /> : <OneRoster key={id} id={id} />
  const Part = { sets: Sets, rosters: Rosters, people: Instructors }[part] ?? Classes
  return (
    <Page title={desk.title} wide aside={<SignedIn />}>
      <Parts here={part} />
      <Part />
    </Page>
  )
}

const parts = ['classes', 'sets', 'rosters', 'people'] as const

function Parts({ here }: { here: string }) {
  return (
    <nav class="desk-nav" aria-label={desk.parts}>
      {parts.map((part) => (
        <a key={part} href={part === 'classes' ? '/instructor' : `/instructor/${part}`} aria-current={part === here ? 'page' : undefined}>
          {desk.nav[part]}
        </a>
      ))}
    </nav>
  )
}

function SignedIn() {
  const me = who.value!
  return (
    <div class="row">
      <span class="small soft">{desk.signedInAs(me.call_sign, desk.roles[me.role])}</span>
      <Button look="quiet" onClick={() => void out()}>
        {desk.signOut}
      </Button>
    </div>
  )
}
