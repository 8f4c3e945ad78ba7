import { useState } from 'preact/hooks'
import { Scene } from '../../render'
import { drill } from '../../words/en/drill'
import { trade } from '../../words/en/trade'
import { SIDE_WORDS, type Item, type Side } from '../../wire.gen'
import type { Fire } from './fire'

interface SceneViewProps {
  item: Item
  fire: Fire | undefined
  cutaway?: boolean
}

/** The scene of an item, seen from the side of the opening it asks about. */
export function SceneView({ item, fire, cutaway = false }: SceneViewProps) {
  const [asked] = item.show
  const [side, setSide] = useState<Side>(sideOf(item, asked) ?? 'A')
  const sides = SIDE_WORDS.filter((one) => item.show.some((id) => sideOf(item, id) === one))
  return (
    <div class="item-scene">
      {fire ? (
        <Scene
          scenario={item.scenario}
          side={side}
          frame={() => fire.frame}
          cutaway={cutaway}
          selected={asked}
          {...windOf(item)}
        />
      ) : (
        <p class="item-lighting" role="status">
          {drill.lighting}
        </p>
      )}
      {sides.length > 1 && (
        <div class="item-sides" role="group" aria-label={drill.sides}>
          {sides.map((one) => (
            <button key={one} type="button" class="side-button" aria-pressed={one === side} onClick={() => setSide(one)}>
              {trade.sides[one]}
            </button>
          ))}
        </div>
      )}
    </div>
  )
}

function sideOf(item: Item, id: string | undefined): Side | undefined {
  return item.scenario.openings.find((one) => one.id === id)?.side
}

function windOf({ scenario: { ambient } }: Item) {
  return ambient.wind_m_s ? { wind: { m_s: ambient.wind_m_s, from: ambient.wind_from } } : {}
}
