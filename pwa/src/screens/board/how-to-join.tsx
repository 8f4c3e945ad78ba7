import { useEffect, useState } from 'preact/hooks'
import { leadsNowhere, useAddress } from '../../class/address'
import { newCode, oneClass } from '../../class/desk'
import { QR } from '../../class/qr'
import { say } from '../../class/say'
import { Button } from '../../ui/button'
import { board } from '../../words/class-board'
import { wall } from '../../words/class-wall'
import type { ClassBoardView, ClassDoor } from '../../wire.gen'
import type { Lead } from './lead'

interface HowToJoinProps {
  view: ClassBoardView
  door: ClassDoor
  lead: Lead
}

/** The code that phones join by, the way to the projector, and the lock. */
export function HowToJoin({ view, door, lead }: HowToJoinProps) {
  const address = useAddress()
  const [failed, setFailed] = useState<string>()
  const renew = () => newCode(lead.id).catch((error: unknown) => setFailed(say(error)))
  return (
    <div class="how-to-join">
      {view.locked ? <p>{wall.locked}</p> : <DoorCode address={address} door={door} />}
      <div class="stack">
        {failed && <p role="alert">{failed}</p>}
        <div class="row">
          <Button onClick={() => void lead.do({ kind: 'locked', on: !view.locked })}>{view.locked ? board.unlock : board.lock}</Button>
          {!lead.key && <Button onClick={() => void renew()}>{board.newCode}</Button>}
        </div>
        {!lead.key && <p class="small soft">{board.newCodeWhy}</p>}
        <ProjectorLink lead={lead} />
      </div>
    </div>
  )
}

/** What phones join by; an address of this machine alone would lead each of them to itself. */
function DoorCode({ address, door }: { address: string; door: ClassDoor }) {
  return (
    <div class="stack">
      <QR text={`${address}/class#${door.token}`} label={wall.codeLabel} />
      <p class="join-code">
        <span>{wall.joinType(`${address.replace(/^https?:\/\//, '')}/class`)}</span>
        <strong>{door.code}</strong>
      </p>
      {leadsNowhere(address) && (
        <p role="alert">
          {board.onlyHere} <code>-addr 0.0.0.0:8080</code>
        </p>
      )}
    </div>
  )
}

function ProjectorLink({ lead }: { lead: Lead }) {
  const address = useAddress()
  const [key, setKey] = useState<string>()
  useEffect(() => {
    oneClass(lead.id, lead.key).then(
      ({ class: listed }) => setKey(listed.projector),
      () => {}, // then there is no link to give
    )
  }, [])
  if (!key) return null
  return (
    <section class="stack">
      <h3>{board.projector}</h3>
      <p class="small soft">{board.projectorWhy}</p>
      <p>
        <a class="lone-link" href={`/projector/${lead.id}#${key}`} target="_blank" rel="noopener">
          {board.projectorOpen}
        </a>
      </p>
      <details>
        <summary>{board.projectorCode}</summary>
        <QR text={`${address}/projector/${lead.id}#${key}`} label={board.projectorCode} />
      </details>
    </section>
  )
}
