import { useState } from 'preact/hooks'
import { WithItem, type Source } from '../../class/with-item'
import { Button } from '../../ui/button'
import { drill } from '../../words/drill'
import type { Item } from '../../wire.gen'
import { Behind } from '../drill/reveal'
import '../drill/drill.css'
import './class.css'

/** A scene as everybody will see it, with what it asks. */
export function Preview({ shown }: { shown: Source }) {
  return <WithItem shown={shown}>{(item) => <Seen item={item} />}</WithItem>
}

function Seen({ item }: { item: Item }) {
  const [cutaway, setCutaway] = useState(false)
  return (
    <div class="stack">
      <p>{item.question.text}</p>
      <Behind item={item} cutaway={cutaway} />
      <Button onClick={() => setCutaway(!cutaway)}>{cutaway ? drill.wallBack : drill.wallAway}</Button>
      <ol class="preview-asks">
        {item.question.asks.map(({ id, text }) => (
          <li key={id}>{text}</li>
        ))}
      </ol>
    </div>
  )
}
