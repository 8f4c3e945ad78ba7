import { useEffect, useState } from 'preact/hooks'
import { drill } from '../../words/drill'
import type { Item } from '../../wire.gen'
import { OwnAsks } from './own-asks'
import { CallOut } from './call-out'
import { useFire } from './fire'
import { TwoLooks } from './looks'
import { SceneView } from './scene-view'
import { reply, seen, set } from './state'
import { TwoScenes } from './two-scenes'

/** A scene and its questions, one at a time, until they are committed. What is shown hangs on the kind (quiz). */
export function ItemView({ item }: { item: Item }) {
  const [ready, setReady] = useState(false)
  const show = () => {
    setReady(true)
    seen()
  }
  const [reported] = set.value?.replies ?? []
  return (
    <div class="item item-asking">
      <p class="item-question">{item.question.text}</p>
      {item.kind === 'call_out' && !reported ? <CallOut item={item} ready={show} reply={reply} /> : <Shown item={item} ready={show} atS={reported?.at_s ?? item.watch?.to_s} />}
      {ready && (item.kind !== 'call_out' || reported) ? <OwnAsks item={item} /> : null}
    </div>
  )
}

interface ShownProps {
  item: Item
  ready(): void
  /** Of a fire that was watched, when it was reported. */
  atS?: number | undefined
}

/** What is looked at while one answers. */
export function Shown({ item, ready, atS }: ShownProps) {
  if (item.kind === 'two_looks' && item.look_s) return <TwoLooks item={item} ready={ready} />
  if (item.kind === 'which_of_two' && item.second) return <TwoScenes item={item} ready={ready} />
  return <OneScene item={item} ready={ready} atS={atS} />
}

function OneScene({ item, ready, atS = item.moment_s }: ShownProps) {
  const { fire, failed } = useFire(item.scenario, atS)
  useEffect(() => {
    if (fire) ready()
  }, [fire])
  if (failed) return <p role="alert">{drill.failed}</p>
  return <SceneView item={item} fire={fire} mark={item.kind !== 'nearest_seat'} />
}
