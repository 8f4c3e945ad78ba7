import { useEffect } from 'preact/hooks'
import { installable, keeping, look, room } from '../../local/keeping'
import { Button } from '../../ui/button'
import { log } from '../../words/log'
import { locale } from '../../words/language'

/** Whether this browser keeps the record, and what to do where it may not. */
export function Keeping() {
  useEffect(() => void look(), [])
  const { used, free } = room.value ?? {}
  return (
    <div class="stack">
      <h3 class="label">{log.keeping}</h3>
      {keeping.value === 'for_good' && <p class="small">{log.keptForGood}</p>}
      {keeping.value === 'may_erase' && (
        <>
          <p class="may-erase">{log.mayErase}</p>
          {installable.value ? (
            <Button onClick={() => void installable.value?.prompt()}>{log.install}</Button>
          ) : (
            <p class="small soft">{log.installByHand}</p>
          )}
        </>
      )}
      {used !== undefined && free !== undefined && <p class="small soft">{log.room({ used: megabytes(used), free: megabytes(free) })}</p>}
    </div>
  )
}

const megabytes = (bytes: number) => (bytes / 1e6).toLocaleString(locale, { maximumFractionDigits: bytes < 1e7 ? 1 : 0 })
