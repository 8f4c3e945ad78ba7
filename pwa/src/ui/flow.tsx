import type { Flow } from '../wire.gen'
import { words } from '../words/frame'
import { trade } from '../words/trade'
import { Choices, type Choice } from './choices'

export type FlowChoice = Flow | 'cannot_tell'

const drawn: readonly Flow[] = ['out', 'both', 'in', 'none']

interface FlowsProps {
  chosen: FlowChoice | undefined
  choose(flow: FlowChoice): void
  earlier?: FlowChoice | undefined
}

/** Which way gas moves at an opening, as arrows drawn in it. Out is to the right, as smoke leaves a wall seen in section. */
export function Flows({ chosen, choose, earlier }: FlowsProps) {
  const choices: Choice<FlowChoice>[] = drawn.map((flow) => ({
    value: flow,
    name: trade.flows[flow],
    picture: <FlowPicture flow={flow} />,
  }))
  choices.push({ value: 'cannot_tell', name: trade.cannotTell })
  return (
    <div class="stack">
      <Choices
        label={trade.cues.flow}
        choices={choices}
        chosen={chosen}
        choose={choose}
        earlier={earlier}
        earlierName={words.app.earlier}
      />
      <p class="small soft">{words.app.flowHint}</p>
    </div>
  )
}

/** A wall cut through at its opening, the inside shaded on the left, with an arrow for each stream. */
export function FlowPicture({ flow }: { flow: Flow }) {
  const out = flow === 'out' || flow === 'both'
  const inward = flow === 'in' || flow === 'both'
  return (
    <svg width="56" height="48" viewBox="0 0 56 48" aria-hidden="true" fill="none" stroke="currentColor">
      <path d="M4 2h22v44H4z" fill="var(--smoke)" fill-opacity="0.22" stroke="none" />
      <path d="M26 2v8M26 40v6" stroke-width="6" />
      <path d="M4 46h48" stroke-width="1.5" />
      {out && <path d="M10 17h34m-8-5 8 5-8 5" stroke="var(--accent)" stroke-width="3" />}
      {flow === 'out' && <path d="M10 31h34m-8-5 8 5-8 5" stroke="var(--accent)" stroke-width="3" />}
      {inward && <path d="M46 33H12m8-5-8 5 8 5" stroke-width="3" />}
      {flow === 'in' && <path d="M46 18H12m8-5-8 5 8 5" stroke-width="3" />}
      {flow === 'none' && <path d="M16 25h4m10 0h4m10 0h4" stroke-width="3" />}
    </svg>
  )
}
