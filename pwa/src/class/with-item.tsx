import type { ComponentChildren } from 'preact'
import { useEffect, useState } from 'preact/hooks'
import { Button } from '../ui/button'
import { words } from '../words/frame'
import { classes } from '../words/class'
import type { ClassShown, Item } from '../wire.gen'
import { engine } from '../worker/client'

type Made = { item: Item } | 'making' | 'failed'

// Scenes take a second or more to make: the last ones stay at hand.
const made = new Map<string, Promise<Item>>()
const mostKept = 8

/** What a scene is made from. */
export type Source = Pick<ClassShown, 'family' | 'seed' | 'own'>

/** Makes a scene on this device: from its family and seed, or from what was sketched. */
export function makeItem({ family, seed, own }: Source): Promise<Item> {
  const key = `${family} ${seed}`
  const known = made.get(key)
  if (known) return known
  const item = engine.item(family, seed, undefined, own)
  item.catch(() => made.delete(key))
  made.set(key, item)
  if (made.size > mostKept) made.delete(made.keys().next().value!)
  return item
}

function useItem(source: Source): { made: Made; again(): void } {
  const [state, setState] = useState<Made>('making')
  const [attempt, setAttempt] = useState(0)
  useEffect(() => {
    let wanted = true
    setState('making')
    makeItem(source).then(
      (item) => wanted && setState({ item }),
      () => wanted && setState('failed'),
    )
    return () => void (wanted = false)
  }, [source.family, source.seed, attempt])
  return { made: state, again: () => setAttempt(attempt + 1) }
}

interface WithItemProps {
  shown: Source
  children: (item: Item) => ComponentChildren
}

/** Shows what needs a scene once it has been made, and says so when it cannot be. */
export function WithItem({ shown, children }: WithItemProps) {
  const { made: state, again } = useItem(shown)
  if (state === 'making') return <p role="status">{classes.making}</p>
  if (state === 'failed')
    return (
      <div class="stack">
        <p role="alert">{classes.sceneFailed}</p>
        <Button onClick={again}>{words.app.tryAgain}</Button>
      </div>
    )
  return <>{children(state.item)}</>
}
