import { Button } from '../../ui/button'
import { drill } from '../../words/drill'
import type { Item } from '../../wire.gen'
import { exportEverything } from '../log/export'
import { Asks } from './asks'
import { beSure, commit, goOnUnkept, phase, reply, set, trouble } from './state'

/** The questions of the open set's scene. */
export function OwnAsks({ item }: { item: Item }) {
  const answering = {
    replies: set.value?.replies ?? [],
    confidence: set.value?.confidence,
    committing: phase.value === 'committing',
    reply,
    beSure,
    commit,
  }
  return <Asks item={item} answering={answering} trouble={trouble.value && <Trouble />} />
}

/** Said plainly, with what can be done; the drill goes on either way. */
function Trouble() {
  const full = trouble.value === 'full'
  return (
    <div class="stack trouble" role="alert">
      <p>{full ? drill.full : drill.notKept}</p>
      {full && (
        <div class="row">
          <Button onClick={() => void exportEverything()}>{drill.exportNow}</Button>
          <Button onClick={() => void goOnUnkept()}>{drill.goOnUnkept}</Button>
        </div>
      )}
    </div>
  )
}
