import { useEffect } from 'preact/hooks'
import { place } from '../../app/router'
import { token, watchFragment } from '../../class/fragment'
import { membership } from '../../class/membership'
import { Claim } from './claim'
import { InClass } from './in-class'
import { Join } from './join'
import './class.css'

/** Class, on a trainee's phone: join, then follow the class from step to step. */
export default function Class() {
  useEffect(watchFragment, [])
  if (place.value.rest[0] === 'claim') return <Claim />
  const member = membership.value
  const another = token.value !== undefined && !(member && 'token' in member.way && member.way.token === token.value)
  return member && !another ? <InClass key={member.id} member={member} /> : <Join key={token.value} />
}
