import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { go, place } from '../../app/router'
import { Refused } from '../../class/ask'
import { takeLead } from '../../class/desk'
import { token, watchFragment } from '../../class/fragment'
import { keep, kept } from '../../class/keep'
import { useAwake } from '../../class/awake'
import { say } from '../../class/say'
import type { Hello } from '../../class/socket'
import { useLive } from '../../class/use-live'
import { Page } from '../../ui/page'
import { board } from '../../words/class-board'
import { Desk } from './desk'
import { Lead } from './lead'
import './board.css'

const keyOf = (id: string) => `lintel.lead.${id}`

/** The board: the instructor's own view of a class, on the laptop by signing in or on a tablet by a one-time code. */
export default function Board() {
  useEffect(watchFragment, [])
  const [id] = place.value.rest
  const [failed, setFailed] = useState<string>()
  const held = token.value
  useEffect(() => {
    if (held === undefined) return
    takeLead(held).then(
      (taken) => {
        keep(keyOf(taken.class), taken.key)
        token.value = undefined
        go(`/board/${taken.class}`)
      },
      (error: unknown) => setFailed(error instanceof Refused && error.status >= 400 && error.status < 429 ? board.leadFailed : say(error)),
    )
  }, [held])
  if (failed) return <Alone said={failed} role="alert" />
  if (held !== undefined) return <Alone said={board.opening} />
  return id ? <Follow key={id} id={id} /> : <Alone said={board.signIn} />
}

function Alone({ said, role = 'status', children }: { said: string; role?: 'status' | 'alert'; children?: ComponentChildren }) {
  return (
    <Page title={board.title}>
      <div class="stack">
        <p role={role}>{said}</p>
        {children}
      </div>
    </Page>
  )
}

function Follow({ id }: { id: string }) {
  const [key] = useState(() => kept<string>(keyOf(id)))
  const [lead] = useState(() => new Lead(id, key === undefined ? undefined : { key }))
  const hello = async (): Promise<Hello> => (key === undefined ? { role: 'board' } : { role: 'lead', key })
  const { heard, line, now } = useLive(id, hello)
  useAwake()
  if (line === 'refused')
    return (
      <Alone said={board.signIn}>
        <a class="button" href="/instructor">
          {board.toSignIn}
        </a>
      </Alone>
    )
  if (!heard.board) return <Alone said={line === 'away' ? board.away : board.opening} />
  return <Desk view={heard.board} here={heard.here ?? []} door={heard.door} away={line === 'away'} now={now} lead={lead} />
}
