import { useEffect, useState } from 'preact/hooks'
import { randomHex } from '../../../local/random'
import { changes, store } from '../../../local/store'
import { burning } from '../../../words/burning'
import { engine } from '../../../worker/client'
import { After } from './after'
import { Before } from './before'
import { During } from './during'
import { newestBurn, type Body, type BurnLog, type Note } from './record'
import './burning.css'

/** A live burn of the box: signed, logged move by move, and gone through afterwards. */
export function Burning() {
  const log = useLog()
  const [afresh, setAfresh] = useState(false)
  if (log === 'lost') return <p role="alert">{burning.noLog}</p>
  if (log === undefined) return <p role="status" class="soft">{burning.log}</p>
  if (log === null || (log.ended && afresh)) return <Before start={(note) => write(randomHex(8), note).then(() => setAfresh(false))} />
  const next = (note: Note) => write(log.burn, note)
  return log.ended ? <After log={log} another={() => setAfresh(true)} /> : <During log={log} write={next} />
}

/** The newest log of this device; null where there is none, undefined until the disk was read, lost where it cannot be. */
function useLog() {
  const [log, setLog] = useState<BurnLog | null | 'lost'>()
  const changed = changes.value
  useEffect(() => {
    let wanted = true
    void store()
      .then((opened) => opened.journal.events())
      .then((events) => wanted && setLog(newestBurn(events) ?? null), () => wanted && setLog('lost'))
    return () => {
      wanted = false
    }
  }, [changed])
  return log
}

/** Writes one note; resolves when it is on the disk. */
async function write(burn: string, note: Note): Promise<void> {
  const at = Date.now()
  const [opened, version] = await Promise.all([store(), engineVersion()])
  const body: Body = { v: 1, about: 'prop_burn', burn, at, ...note }
  await opened.record('note', version, body)
}

/** The engine's version goes with every event; a log must not fail for want of it. */
const engineVersion = () => engine.version().then((version) => version.engine, () => '')
