import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { sizeUp } from '../../words/size-up'
import { trade } from '../../words/trade'
import { SIDE_WORDS, type Side } from '../../wire.gen'
import { Elevation } from './elevation'
import { addable, outsides, seenAs, storeysOf, withOpening, withoutOpening, withRoofOpening, withStoreys, type Sketch } from './sketch'
import { sketch } from './state'

/** Storeys a sketch may have: as many as the report has words for. */
const mostStoreys = 4

const setSketch = (next: Sketch) => void (sketch.value = next)

/** Drawing a building from outside: its storeys, then the openings of each side. */
export function SketchEditor({ drawn }: { drawn: Sketch }) {
  const [side, setSide] = useState<Side>('A')
  const storeys = storeysOf(drawn.plan).length
  return (
    <div class="stack stack-wide building-halves">
      <section class="stack">
        <h3 class="label">{sizeUp.storeys}</h3>
        <Choices
          label={sizeUp.storeys}
          columns={4}
          choices={Array.from({ length: mostStoreys }, (_, n) => ({ value: n + 1, name: String(n + 1) }))}
          chosen={storeys}
          choose={(count) => setSketch(withStoreys(drawn, count))}
        />
        <h3 class="label">{sizeUp.construction}</h3>
        <Choices
          label={sizeUp.construction}
          columns={2}
          choices={Object.entries(sizeUp.constructions).map(([value, name]) => ({ value, name }))}
          chosen={drawn.construction ?? ''}
          choose={(construction) => setSketch({ ...drawn, construction: construction || undefined })}
        />
      </section>
      <section class="stack">
        <h3 class="label">{sizeUp.sides}</h3>
        <Choices<Side>
          label={sizeUp.sides}
          columns={4}
          choices={SIDE_WORDS.map((value) => ({ value, name: trade.sides[value] }))}
          chosen={side}
          choose={setSide}
        />
        <SideOpenings drawn={drawn} side={side} storeys={storeys} set={setSketch} />
        <RoofOpenings drawn={drawn} set={setSketch} />
      </section>
    </div>
  )
}

interface SideOpeningsProps {
  drawn: Sketch
  side: Side
  storeys: number
  set(next: Sketch): void
}

function SideOpenings({ drawn, side, storeys, set }: SideOpeningsProps) {
  const here = outsides(drawn).filter((one) => one.side === side)
  return (
    <>
      <Elevation sketch={drawn} side={side} openings={here} />
      <OpeningList drawn={drawn} here={here} set={set} />
      {Array.from({ length: storeys }, (_, n) => n + 1).map((floor) => (
        <div key={floor} class="stack">
          <h3 class="label">{sizeUp.addTo(trade.sides[side], floor)}</h3>
          <div class="choices choices-4">
            {addable.map((kind) => (
              <button key={kind} type="button" class="choice" onClick={() => set(withOpening(drawn, side, floor, kind))}>
                <span class="choice-name">{trade.kinds[seenAs[kind]]}</span>
              </button>
            ))}
          </div>
        </div>
      ))}
    </>
  )
}

function RoofOpenings({ drawn, set }: { drawn: Sketch; set(next: Sketch): void }) {
  return (
    <section class="stack">
      <h3 class="label">{trade.roof}</h3>
      <OpeningList drawn={drawn} here={outsides(drawn).filter((one) => one.side === undefined)} set={set} />
      <Button onClick={() => set(withRoofOpening(drawn))}>{sizeUp.addRoof}</Button>
    </section>
  )
}

function OpeningList({ drawn, here, set }: { drawn: Sketch; here: ReturnType<typeof outsides>; set(next: Sketch): void }) {
  return (
    <ul class="opening-list">
      {here.map(({ id, name, floor }) => (
        <li key={id}>
          <span>
            {name} <small class="soft">{sizeUp.division(floor)}</small>
          </span>
          <Button look="quiet" aria-label={sizeUp.remove(name)} onClick={() => set(withoutOpening(drawn, id))}>
            {sizeUp.removeShort}
          </Button>
        </li>
      ))}
    </ul>
  )
}
