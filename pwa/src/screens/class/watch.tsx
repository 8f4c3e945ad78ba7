import { LookLine } from '../../class/look-line'
import { WithItem } from '../../class/with-item'
import { classes } from '../../words/class'
import type { ClassShown, Item } from '../../wire.gen'
import { Shown } from '../drill/item-view'
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

/** What is looked at before the questions come. A scene that one calls out is seen as it begins: it runs with its question. */
export function Looked({ item }: { item: Item }) {
  const first = item.kind === 'call_out' && item.watch ? { ...item, moment_s: item.watch.from_s } : item
  return <Shown item={first} ready={() => {}} />
}
