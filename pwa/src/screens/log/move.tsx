import { useEffect, useState } from 'preact/hooks'
import { QR } from '../../class/qr'
import { moveAddress, Moving, offerScanned, type Offer, type Taken } from '../../local/move'
import type { Self } from '../../local/self'
import { changes, store } from '../../local/store'
import { Button } from '../../ui/button'
import { Dialog } from '../../ui/dialog'
import { log } from '../../words/log'

/** Hands the record to another phone, by a code that works once and for a minute. */
export function Move({ self }: { self: Self }) {
  const [offer, setOffer] = useState<Offer>()
  const [said, say] = useState('')
  const begin = async () => {
    const opened = await store()
    if ((await opened.journal.unsynced()) > 0 && (await opened.syncNow()) !== 'done') return say(log.moveUnsynced)
    const made = await new Moving(opened.journal).offer()
    say(made ? '' : log.moveFailed)
    setOffer(made)
  }
  if (self.moved) return <p role="status">{log.movedAway}</p>
  if (!self.registered) return null // nothing to move yet
  return (
    <>
      <Button onClick={() => void begin()}>{log.move}</Button>
      <p class="small soft" role="status">
        {said || log.moveWhy}
      </p>
      {offer && <Code offer={offer} close={() => setOffer(undefined)} />}
    </>
  )
}

function Code({ offer, close }: { offer: Offer; close(): void }) {
  const left = useSecondsLeft()
  const closed = async () => {
    await (await store()).syncNow() // finds out whether it was taken
    close()
  }
  return (
    <Dialog title={log.move} close={() => void closed()}>
      {left > 0 ? (
        <>
          <p>{log.moveScan(left)}</p>
          <QR text={moveAddress(offer, location.origin)} label={log.moveQR} />
        </>
      ) : (
        <p>{log.moveOver}</p>
      )}
      <Button onClick={() => void closed()}>{log.moveClose}</Button>
    </Dialog>
  )
}

const codeLasts = 60 // s, as the server has it; counted here, since the two clocks may differ

function useSecondsLeft(): number {
  const [left, setLeft] = useState(codeLasts)
  useEffect(() => {
    const timer = setInterval(() => setLeft((now) => Math.max(0, now - 1)), 1000)
    return () => clearInterval(timer)
  }, [])
  return left
}

/** Takes over a record whose code was scanned with this phone, or goes on with it. */
export function Take({ self }: { self: Self }) {
  const [offer, setOffer] = useState<Offer>()
  const [said, say] = useState('')
  const own = self.next - 1
  const waiting = own - self.acked
  const settle = (taken: Taken) => {
    changes.value++
    setOffer(undefined)
    say(spellTaken(taken))
  }
  useEffect(() => {
    const scanned = offerScanned()
    if (scanned === 'unreadable') return say(log.takeFailed)
    setOffer(scanned)
    if (self.taking && waiting === 0) void resume().then(settle)
  }, [])
  if (said) return <p role="status">{said}</p>
  if (!offer) return self.taking ? <p role="status">{waiting > 0 ? log.takingUnsynced : log.takeGoesOn}</p> : null
  const take = async () => settle(await new Moving((await store()).journal).take(offer))
  return (
    <Dialog title={log.taking} close={() => setOffer(undefined)}>
      <p>{waiting > 0 ? log.takingUnsynced : log.takingWhy}</p>
      {own > 0 && waiting === 0 && <p>{log.takingLoses(own)}</p>}
      <div class="row">
        <Button onClick={() => setOffer(undefined)}>{log.keep}</Button>
        {waiting === 0 && (
          <Button look="main" onClick={() => void take()}>
            {log.takeNow}
          </Button>
        )}
      </div>
    </Dialog>
  )
}

const resume = async () => new Moving((await store()).journal).resume()

function spellTaken(taken: Taken): string {
  if (taken.kind === 'taken') return log.taken(taken.callSign)
  return taken.kind === 'waiting' ? log.takeWaits : log.takeFailed
}
