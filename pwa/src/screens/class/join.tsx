import { useEffect, useRef, useState } from 'preact/hooks'
import { token } from '../../class/fragment'
import { membership, type Way } from '../../class/membership'
import { join } from '../../class/phone'
import { sayJoin } from '../../class/say'
import { store } from '../../local/store'
import { Button } from '../../ui/button'
import { Page } from '../../ui/page'
import { TextField } from '../../ui/text-field'
import { classes } from '../../words/class'

const codeLength = 8

/** The way into a class: by the token that a camera read, or by eight characters; and under which call sign. */
export function Join() {
  const [code, setCode] = useState('')
  const [callSign, setCallSign] = useOwnCallSign()
  const [state, setState] = useState<{ joining: boolean; failed?: string }>({ joining: false })
  const way: Way = token.value === undefined ? { code: clean(code) } : { token: token.value }
  const go = async (event: Event) => {
    event.preventDefault()
    if (state.joining) return
    const missing = whatIsMissing(way, callSign)
    if (missing) return setState({ joining: false, failed: missing })
    setState({ joining: true })
    try {
      await join(way, { a: callSign.trim() })
    } catch (error) {
      setState({ joining: false, failed: sayJoin(error) })
    }
  }
  return (
    <Page title={classes.title}>
      <form class="stack stack-wide" onSubmit={(event) => void go(event)}>
        {'token' in way ? <p>{classes.scanned}</p> : <p>{classes.joinLead}</p>}
        {'code' in way && <CodeField code={code} set={setCode} />}
        <TextField label={classes.callSign} value={callSign} set={setCallSign} hint={classes.whoWhy} most={32} />
        {state.failed && <p role="alert">{state.failed}</p>}
        <Button look="main" wide submit disabled={state.joining}>
          {state.joining ? classes.joining : classes.join}
        </Button>
        {!isSecureContext && <p class="small soft">{classes.plainHttp}</p>}
        <Elsewhere />
      </form>
    </Page>
  )
}

/** What must be typed before anybody is asked: a button that does nothing says nothing. */
function whatIsMissing(way: Way, callSign: string): string | undefined {
  if ('code' in way && way.code.length !== codeLength) return classes.codeLength(way.code.length, codeLength)
  return callSign.trim() === '' ? classes.callSignMissing : undefined
}

/** Where else one may have wanted to go: the class one is in, or the instructor's own screens. */
function Elsewhere() {
  return (
    <div class="class-elsewhere stack">
      {membership.value && (
        <Button wide onClick={() => void (token.value = undefined)}>
          {classes.goBack}
        </Button>
      )}
      <div>
        <a class="lone-link" href="/instructor">
          {classes.lead}
        </a>
        <p class="small soft">{classes.leadWhy}</p>
      </div>
    </div>
  )
}

function CodeField({ code, set }: { code: string; set(code: string): void }) {
  return (
    <TextField label={classes.code} value={code} set={(next) => set(next.toUpperCase())} hint={classes.codeHint} most={codeLength + 2} look="code" capitals />
  )
}

/** The code as the server knows it: a person may part it with blanks or strokes. */
const clean = (code: string) => code.replaceAll(/[^0-9a-z]/gi, '').toUpperCase()

/** The call sign that this device goes by, to be changed or kept. It comes from the disk: whoever has typed by then keeps what they typed. */
function useOwnCallSign(): [string, (next: string) => void] {
  const [callSign, setCallSign] = useState('')
  const touched = useRef(false)
  useEffect(() => {
    void store()
      .then(({ journal }) => journal.self())
      .then((self) => touched.current || setCallSign(self.callSign))
  }, [])
  const type = (next: string) => {
    touched.current = true
    setCallSign(next)
  }
  return [callSign, type]
}
