import { useEffect } from 'preact/hooks'
import { drill } from '../../words/drill'
import type { Item } from '../../wire.gen'
import { useFire } from './fire'
import { SceneView } from './scene-view'

/** A contrasting pair: two scenes that are easily taken for one another, both always in sight. */
export function TwoScenes({ item, cutaway = false, ready }: { item: Item; cutaway?: boolean; ready?(): void }) {
  const second = item.second!
  const one = useFire(item.scenario, item.moment_s).fire
  const other = useFire(second.scenario, second.moment_s).fire
  useEffect(() => {
    if (one && other) ready?.()
  }, [one, other])
  return (
    <div class="pair">
      <SceneView item={item} fire={one} cutaway={cutaway} caption={drill.picks.first} />
      <SceneView item={{ ...item, scenario: second.scenario }} fire={other} cutaway={cutaway} caption={drill.picks.second} />
    </div>
  )
}
