import { useState } from 'preact/hooks'
import { Scene } from '../../render'
import { OneOf } from '../../ui/one-of'
import { drill } from '../../words/drill'
import { trade } from '../../words/trade'
import { SIDE_WORDS, type Item, type Scenario, type Side } from '../../wire.gen'
import type { Fire } from './fire'

interface SceneViewProps {
  item: Pick<Item, 'show' | 'light'> & { scenario: Scenario }
  fire: Pick<Fire, 'frame'> | undefined
  cutaway?: boolean
  /** Whether the opening asked about is marked. Not where to find it is the question. */
  mark?: boolean
  /** What is said of this picture where several stand side by side. */
  caption?: string
}

/** The scene of an item, seen from the side of the opening it asks about. */
export function SceneView({ item, fire, cutaway = false, mark = true, caption }: SceneViewProps) {
  const [asked] = item.show
  const [side, setSide] = useState<Side>(sideOf(item, asked) ?? 'A')
  const sides = SIDE_WORDS.filter((one) => item.show.some((id) => sideOf(item, id) === one))
  return (
    <figure class={cutaway ? 'item-scene item-scene-cut' : 'item-scene'} aria-label={caption}>
      {fire ? (
        <Scene
          scenario={item.scenario}
          side={side}
          frame={() => fire.frame}
          cutaway={cutaway}
          selected={mark ? asked : undefined}
          light={item.light}
          {...windOf(item.scenario)}
        />
      ) : (
        <PictureToCome said={drill.lighting} />
      )}
      {caption && <figcaption class="item-caption">{caption}</figcaption>}
      {sides.length > 1 && (
        <OneOf label={drill.sides} class="item-sides" of={sides.map((value) => ({ value, name: trade.sides[value] }))} chosen={side} choose={setSide} />
      )}
    </figure>
  )
}

/** Holds the place of a picture that is on its way, and says what it waits for. */
export function PictureToCome({ said }: { said: string }) {
  return (
    <p class="item-lighting" role="status">
      {said}
    </p>
  )
}

function sideOf(item: { scenario: Scenario }, id: string | undefined): Side | undefined {
  return item.scenario.openings.find((one) => one.id === id)?.side
}

function windOf({ ambient }: Scenario) {
  return ambient.wind_m_s ? { wind: { m_s: ambient.wind_m_s, from: ambient.wind_from } } : {}
}
