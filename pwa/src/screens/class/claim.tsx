import { useEffect, useState } from 'preact/hooks'
import { token } from '../../class/fragment'
import { claim } from '../../class/phone'
import { say } from '../../class/say'
import { Refused } from '../../class/ask'
import { Page } from '../../ui/page'
import { classes } from '../../words/class'

/** Takes one's place in a roster, by the personal code on the sheet. */
export function Claim() {
  const [said, setSaid] = useState<string>(classes.claiming)
  const held = token.value
  useEffect(() => {
    if (held === undefined) return
    claim(held).then(
      (callSign) => setSaid(classes.claimed(callSign)),
      (error: unknown) => setSaid(error instanceof Refused && error.status >= 400 && error.status < 429 ? classes.claimFailed : say(error)),
    )
  }, [held])
  return (
    <Page title={classes.claimTitle}>
      <div class="stack stack-wide">
        <p role="status">{held === undefined ? classes.claimNone : said}</p>
        <a class="button" href="/class">
          {classes.toClass}
        </a>
      </div>
    </Page>
  )
}
