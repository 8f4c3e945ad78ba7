import { useState } from 'preact/hooks'
import { Refused } from '../../class/ask'
import { setUp, signIn, takeCode, type Me } from '../../class/desk'
import { say } from '../../class/say'
import { Button } from '../../ui/button'
import { Page } from '../../ui/page'
import { TextField } from '../../ui/text-field'
import { desk } from '../../words/class-desk'
import { failed, look, step, who } from './state'

/** What stands before the desk: make the first instructor, sign in, or read why one cannot here. */
export function Gate() {
  const door = step.value
  if (failed.value)
    return (
      <Page title={desk.title}>
        <div class="stack">
          <p role="alert">{failed.value}</p>
          <div>
            <Button onClick={() => void look()}>{desk.again}</Button>
          </div>
        </div>
      </Page>
    )
  if (!door)
    return (
      <Page title={desk.title}>
        <p role="status">{desk.looking}</p>
      </Page>
    )
  if (!door.may_sign_in)
    return (
      <Page title={desk.notHere}>
        <p>{desk.notHereWhy}</p>
      </Page>
    )
  return door.set_up ? <SignIn /> : <SetUp />
}

/** Runs a way in and tells why it was not taken. */
function useWayIn(wrong: string) {
  const [said, setSaid] = useState<string>()
  const [waiting, setWaiting] = useState(false)
  const enter = async (event: Event, fields: readonly string[], run: () => Promise<Me>) => {
    event.preventDefault()
    if (fields.some((typed) => typed.trim() === '')) return setSaid(desk.fieldsMissing)
    setWaiting(true)
    setSaid(undefined)
    try {
      who.value = await run()
    } catch (error) {
      if (error instanceof Refused && error.where === 'pass_phrase') return setSaid(desk.phraseRefused)
      const refused = error instanceof Refused && (error.status === 401 || error.status === 403)
      setSaid(refused ? wrong : say(error))
    } finally {
      setWaiting(false)
    }
  }
  return { said, waiting, enter }
}

function SetUp() {
  const [code, setCode] = useState('')
  const [callSign, setCallSign] = useState('')
  const [phrase, setPhrase] = useState('')
  const { said, waiting, enter } = useWayIn(desk.refused)
  return (
    <Page title={desk.setUpTitle}>
      <form class="stack stack-wide" onSubmit={(event) => void enter(event, [code, callSign, phrase], () => setUp(code.trim(), callSign.trim(), phrase))}>
        <p>{desk.setUpWhy}</p>
        <TextField label={desk.setUpCode} value={code} set={setCode} />
        <TextField label={desk.callSign} value={callSign} set={setCallSign} most={32} autoComplete="username" />
        <TextField label={desk.phrase} value={phrase} set={setPhrase} type="password" hint={desk.phraseHint} autoComplete="new-password" />
        {said && <p role="alert">{said}</p>}
        <Button look="main" wide submit disabled={waiting}>
          {desk.setUpNow}
        </Button>
      </form>
    </Page>
  )
}

function SignIn() {
  const [callSign, setCallSign] = useState('')
  const [phrase, setPhrase] = useState('')
  const { said, waiting, enter } = useWayIn(desk.wrongPhrase)
  return (
    <Page title={desk.signInTitle}>
      <div class="stack stack-wide">
        <form class="stack stack-wide" onSubmit={(event) => void enter(event, [callSign, phrase], () => signIn(callSign.trim(), phrase))}>
          <TextField label={desk.callSign} value={callSign} set={setCallSign} most={32} autoComplete="username" />
          <TextField label={desk.phrase} value={phrase} set={setPhrase} type="password" autoComplete="current-password" />
          {said && <p role="alert">{said}</p>}
          <Button look="main" wide submit disabled={waiting}>
            {desk.signInNow}
          </Button>
        </form>
        <details>
          <summary>{desk.codeTitle}</summary>
          <ByCode />
        </details>
      </div>
    </Page>
  )
}

/** An invitation makes a new instructor; a code of the console sets a new pass phrase. */
function ByCode() {
  const [code, setCode] = useState('')
  const [callSign, setCallSign] = useState('')
  const [phrase, setPhrase] = useState('')
  const { said, waiting, enter } = useWayIn(desk.refused)
  return (
    <form class="stack desk-code" onSubmit={(event) => void enter(event, [code, phrase], () => takeCode(code.trim(), phrase, callSign.trim() || undefined))}>
      <p class="small soft">{desk.codeWhy}</p>
      <TextField label={desk.code} value={code} set={setCode} />
      <TextField label={desk.codeCallSign} value={callSign} set={setCallSign} most={32} />
      <TextField label={desk.codePhrase} value={phrase} set={setPhrase} type="password" hint={desk.phraseHint} autoComplete="new-password" />
      {said && <p role="alert">{said}</p>}
      <Button submit wide disabled={waiting}>
        {desk.codeNow}
      </Button>
    </form>
  )
}
