import { words } from '../words/frame'
import { sync } from '../local/status'

/** How many of one's own records have not yet reached the server. Always shown when there are any. */
export function SyncNote() {
  const { unsynced, reach } = sync.value
  if (unsynced === 0 && reach !== 'offline') return null
  return (
    <span role="status">
      <a class="small" href="/log">
        {unsynced > 0 ? words.sync.unsynced(unsynced) : words.sync.offline}
      </a>
    </span>
  )
}
