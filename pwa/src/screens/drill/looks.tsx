import { useEffect, useState } from 'preact/hooks'
import type { FrameLook } from '../../render'
import { OneOf } from '../../ui/one-of'
import { drill } from '../../words/drill'
import type { Item } from '../../wire.gen'
import { Fire } from './fire'
import { SceneView } from './scene-view'

/** Two looks at one fire: side by side where there is room, else one at a time in the same place. */
export function TwoLooks({ item, cutaway = false, ready }: { item: Item; cutaway?: boolean; ready?(): void }) {
  const looks = useLooks(item)
  const [shown, show] = useState(0)
  useEffect(() => {
    if (looks) ready?.()
  }, [looks])
  const names = [drill.earlierLook, drill.laterLook(Math.round(item.look_s![1]! - item.look_s![0]!))]
  return (
    <div class="pair pair-swapped" data-shown={shown}>
      {names.map((caption, n) => (
        <SceneView key={caption} item={item} fire={looks && { frame: looks[n]! }} cutaway={cutaway} caption={caption} />
      ))}
      <OneOf label={drill.looks} class="pair-choice" of={names.map((name, value) => ({ value, name }))} chosen={shown} choose={show} />
    </div>
  )
}

/** The frames at both looks, from one fire that burns through both. */
function useLooks(item: Item): [FrameLook, FrameLook] | undefined {
  const [looks, setLooks] = useState<[FrameLook, FrameLook]>()
  useEffect(() => {
    let wanted = true
    const [first = 0, second = 0] = item.look_s ?? []
    void (async () => {
      const fire = await Fire.burn(item.scenario, first)
      const earlier = structuredClone(fire.frame!) // the next frame is written over this one
      await fire.burnOn(second - first)
      if (wanted) setLooks([earlier, fire.frame!])
      fire.close()
    })()
    return () => {
      wanted = false
    }
  }, [item])
  return looks
}
