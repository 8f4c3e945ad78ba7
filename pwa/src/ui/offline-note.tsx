import { offlineUse } from '../local/status'
import { words } from '../words/frame'

/** Says whether the app works with no server and, where it does not, why. */
export function OfflineNote() {
  const said = {
    'plain-http': words.sync.plainHttp,
    unsupported: words.sync.unsupported,
    preparing: words.sync.preparing,
    ready: words.sync.ready,
  }[offlineUse.value]
  return (
    <p class="small soft" role="status">
      {said}
    </p>
  )
}
