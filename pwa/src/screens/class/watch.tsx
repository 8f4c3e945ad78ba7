import { LookLine } from '../../class/look-line'
import { WithItem } from '../../class/with-item'
import { classes } from '../../words/en/class'
import type { ClassShown, Item } from '../../wire.gen'
import { useFire } from '../drill/fire'
import { SceneView } from '../drill/scene-view'
import '../drill/drill.css'

/** The look: the same fire as on everybody's phone and on the wall, and no question yet. */
export function Watch({ shown, now }: { shown: ClassShown; now(): number }) {
  return (
    <>
      <p class="item-question">{classes.watch}</p>
      <WithItem shown={shown}>{(item) => <Looked item={item} />}</WithItem>
      <LookLine from={shown.look_from_ms} until={shown.look_until_ms} now={now} />
    </>
  )
}

function Looked({ item }: { item: Item }) {
  const { fire, failed } = useFire(item.scenario, item.moment_s)
  if (failed) return <p role="alert">{classes.sceneFailed}</p>
  return <SceneView item={item} fire={fire} />
}
