import { useState } from 'preact/hooks'
import { useAddress } from '../../class/address'
import { claimCode, rosters } from '../../class/desk'
import { QR } from '../../class/qr'
import { Button } from '../../ui/button'
import { Page } from '../../ui/page'
import { desk } from '../../words/class-desk'
import { found, useDoing, useLoaded } from './use-loaded'

/** Personal codes to print and hand out: each lets one phone take one place of the roster. */
export function ClaimSheets({ id }: { id: string }) {
  const { value: roster, failed } = useLoaded(async () => found((await rosters()).rosters, id))
  const [tokens, setTokens] = useState<ReadonlyMap<string, string>>(new Map())
  const doing = useDoing()
  const address = useAddress()
  const make = async () => {
    const made = new Map<string, string>()
    for (const seat of roster!.seats) {
      made.set(seat.id, (await claimCode(id, seat.id)).token)
      setTokens(new Map(made))
    }
  }
  return (
    <Page title={roster?.title ?? desk.rosters} wide>
      {(failed ?? doing.failed) && <p role="alert">{failed ?? doing.failed}</p>}
      <div class="stack no-print">
        <p>{desk.claimSheetsWhy}</p>
        <div class="row">
          <Button look="main" disabled={!roster || doing.doing} onClick={() => void doing.run(make)}>
            {desk.claimMake}
          </Button>
          {tokens.size > 0 && <Button onClick={() => print()}>{desk.print}</Button>}
        </div>
      </div>
      <ul class="claim-sheets">
        {roster?.seats
          .filter((seat) => tokens.has(seat.id))
          .map((seat) => (
            <li key={seat.id}>
              <QR text={`${address}/class/claim#${tokens.get(seat.id)}`} label={desk.claimSheet(seat.call_sign)} />
              <strong>{seat.call_sign}</strong>
              <span class="small">{desk.claimHow}</span>
            </li>
          ))}
      </ul>
    </Page>
  )
}
