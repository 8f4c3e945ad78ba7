import { useState } from 'preact/hooks'
import { openingName } from '../../render'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { prop } from '../../words/prop'
import type { Bench } from './bench'
import { listed } from './moves'
import type { Now } from './view'

interface PanelProps { bench: Bench; now: Now; selected: string | undefined; select(id: string): void; again(): void }

const states = { open: 1, part: 0.25, shut: 0 } as const
type State = keyof typeof states

/** Two futures of one moment, and the same past without one of its moves. */
export function WhatIfPanel(props: PanelProps) {
  return (
    <div class="stack">
      <Futures {...props} />
      <section class="prop-so-far stack">
        <Button wide onClick={() => props.bench.branch()}>{prop.branch}</Button>
        <p class="small soft">{prop.branchNote}</p>
      </section>
      <MovesSoFar {...props} />
      <Button look="quiet" onClick={props.again}>{prop.again}</Button>
    </div>
  )
}

function Futures({ bench, now, selected, select }: PanelProps) {
  const { openings } = bench.building.scenario
  const movable = openings.filter(({ kind }) => kind !== 'leak')
  const chosen = movable.find(({ id }) => id === selected) ?? movable[0]!
  const stands = now.first.frame.openings[openings.indexOf(chosen)]?.open ?? 0
  const [wish, setWish] = useState<State>()
  const state = wish ?? (stands > 0.5 ? 'shut' : 'open')
  return (
    <>
      <h2 class="label">{prop.whatIf}</h2>
      <label class="prop-choose">
        <span>{prop.whatIfOpening}</span>
        <select aria-label={prop.whatIfOpening} value={chosen.id} onChange={(event) => { select(event.currentTarget.value); setWish(undefined) }}>
          {movable.map((opening) => (
            <option key={opening.id} value={opening.id}>
              {prop.moved(openingName(opening), prop.openness(Math.round(100 * (now.first.frame.openings[openings.indexOf(opening)]?.open ?? 0))))}
            </option>
          ))}
        </select>
      </label>
      <Choices
        label={prop.whatIfState} columns={3} chosen={state} choose={(value: State) => setWish(value)}
        choices={(Object.keys(states) as State[]).map((value) => ({ value, name: prop.states[value] }))}
      />
      <Button look="main" wide onClick={() => bench.whatIf(chosen.id, states[state])}>{prop.showBoth}</Button>
      <p class="small soft">{prop.whatIfNote}</p>
    </>
  )
}

function MovesSoFar({ bench, now }: PanelProps) {
  const moves = listed(now.first.moves, bench.building.scenario)
  return (
    <section class="prop-so-far">
      <h2 class="label">{prop.movesSoFar}</h2>
      <p class="small soft">{moves.some(({ fuel }) => !fuel) ? prop.movesNote : prop.noMoves}</p>
      <ol class="prop-moves">
        {moves.map(({ tS, name, indexes, fuel }) => (
          <li key={indexes[0]}>
            <button type="button" class="prop-move" aria-label={prop.lookAtLabel(name, prop.clock(tS))} onClick={() => bench.seek(tS)}>
              <span class="prop-when">{prop.clock(tS)}</span> {name}
            </button>
            {!fuel && (
              <Button look="quiet" aria-label={prop.leaveOutLabel(name, prop.clock(tS))} onClick={() => bench.leaveOut(indexes)}>
                {prop.leaveOut}
              </Button>
            )}
          </li>
        ))}
      </ol>
    </section>
  )
}
