import { prop } from '../../words/prop'
import type { Opening } from '../../wire.gen'
import { openingName } from '../../render'
import type { Bench } from './bench'
import type { View } from './view'

interface PanelProps { bench: Bench; view: View; selected: string | undefined; select(id: string): void }

/** Every opening as a row: a slider, and one button that opens or shuts. */
export function OpeningsPanel(props: PanelProps) {
  const { openings } = props.bench.building.scenario
  const movable = openings.filter((opening) => opening.kind !== 'leak')
  const outside = movable.filter((opening) => opening.to === 'outside')
  const inside = movable.filter((opening) => opening.to !== 'outside')
  return (
    <div class="stack">
      <p class="small soft">{prop.dragHint}</p>
      <Group {...props} name={prop.outside} openings={outside} />
      <Group {...props} name={prop.inside} openings={inside} />
    </div>
  )
}

function Group({ name, openings, ...rest }: PanelProps & { name: string; openings: Opening[] }) {
  return (
    <section>
      <h2 class="label">{name}</h2>
      <ul class="prop-openings">
        {openings.map((opening) => <Row key={opening.id} {...rest} opening={opening} />)}
      </ul>
    </section>
  )
}

function Row({ bench, view, opening, selected, select }: PanelProps & { opening: Opening }) {
  const index = bench.building.scenario.openings.indexOf(opening)
  const open = view.frame.openings[index]?.open ?? opening.open ?? 0
  const percent = Math.round(100 * open)
  const name = openingName(opening)
  const set = (share: number, swing = false) => {
    select(opening.id)
    bench.setOpening(opening.id, share, undefined, swing)
  }
  return (
    <li class="prop-opening" aria-current={selected === opening.id}>
      <div>
        <span class="prop-opening-name">{name}</span>
        <span class="small soft"> {prop.openness(percent)}</span>
        <input
          type="range" min={0} max={100} step={5} value={percent}
          aria-label={prop.howFar(name)} aria-valuetext={prop.openness(percent)}
          onInput={(event) => set(Number(event.currentTarget.value) / 100)}
        />
      </div>
      <button type="button" class="prop-toggle" aria-label={`${open > 0.5 ? prop.shut : prop.open}: ${name}`} onClick={() => set(open > 0.5 ? 0 : 1, true)}>
        {open > 0.5 ? prop.shut : prop.open}
      </button>
    </li>
  )
}
