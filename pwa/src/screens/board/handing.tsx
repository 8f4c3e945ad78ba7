import { useEffect, useState } from 'preact/hooks'
import { useAddress } from '../../class/address'
import { dropLead, leadCode, leads } from '../../class/desk'
import { QR } from '../../class/qr'
import { say } from '../../class/say'
import { Button } from '../../ui/button'
import { board } from '../../words/class-board'
import { locale } from '../../words/language'

type Leads = Awaited<ReturnType<typeof leads>>['leads']

/** Hands the class to a phone or tablet by a one-time code, and takes it back. */
export function Handing({ id }: { id: string }) {
  const address = useAddress()
  const [token, setToken] = useState<string>()
  const [held, setHeld] = useState<Leads>([])
  const [failed, setFailed] = useState<string>()
  const look = async () => setHeld((await leads(id)).leads)
  const fresh = async () => setToken((await leadCode(id)).token)
  const drop = async (lead: string) => {
    await dropLead(id, lead)
    await look()
  }
  const tell = (error: unknown) => setFailed(say(error))
  useEffect(() => {
    void fresh().catch(tell)
    void look().catch(tell)
  }, [])
  return (
    <div class="stack">
      <p>{board.handOverWhy}</p>
      {token && <QR text={`${address}/board#${token}`} label={board.handOverLabel} />}
      {failed && <p role="alert">{failed}</p>}
      <Button onClick={() => void fresh().catch(tell)}>{board.handOverAgain}</Button>
      {held.length > 0 && (
        <section class="stack">
          <h3>{board.leads}</h3>
          <ul class="plain-list">
            {held.map((lead) => (
              <li key={lead.id} class="row spread">
                <span>{board.leadSince(clock(lead.from_ms))}</span>
                <Button onClick={() => void drop(lead.id).catch(tell)}>{board.leadDrop}</Button>
              </li>
            ))}
          </ul>
        </section>
      )}
    </div>
  )
}

const clock = (ms: number) => new Date(ms).toLocaleTimeString(locale, { hour: '2-digit', minute: '2-digit' })
