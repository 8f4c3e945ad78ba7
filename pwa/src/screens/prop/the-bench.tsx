import { useState } from 'preact/hooks'
import { OneOf } from '../../ui/one-of'
import { Tabs } from '../../ui/tabs'
import { prop } from '../../words/prop'
import { trade } from '../../words/trade'
import type { Side } from '../../wire.gen'
import type { Bench } from './bench'
import { Compare } from './compare'
import { CurvesPanel } from './curves-panel'
import { FuelPanel } from './fuel-panel'
import { KeepMoment } from './keep-moment'
import { OpeningsPanel } from './openings-panel'
import { Readout } from './readout'
import { ScaleNote } from './scale-note'
import { Bar, TimeNotes, Timeline } from './timeline'
import { Watch } from './watch'
import { WaterPanel } from './water-panel'
import { WhatIfPanel } from './what-if-panel'

type Panel = keyof typeof prop.panel
const panels = (['fuel', 'openings', 'water', 'whatIf', 'curves'] as const).map((id) => ({ id, name: prop.panel[id] }))

/** The fire, or both, with everything that can be done to it. */
export function TheBench({ bench, again }: { bench: Bench; again(): void }) {
  const { building } = bench
  const [side, setSide] = useState<Side>(building.sides[0]!)
  const [cutaway, setCutaway] = useState(false)
  const [selected, select] = useState<string | undefined>(building.scenario.openings[0]?.id)
  const [panel, setPanel] = useState<Panel>('fuel')
  const now = bench.now.value
  if (!now) return null
  const acted = now.second && bench.target.value !== 'first' ? now.second : now.first
  return (
    <div class="prop-bench">
      <div class="prop-view">
        <Watch bench={bench} now={now} side={side} cutaway={cutaway} selected={selected} select={select}>
          <Timeline bench={bench} now={now} />
          <Bar bench={bench} lit={now.first.lit} cutaway={cutaway} cut={setCutaway} />
        </Watch>
        {building.sides.length > 1 && (
          <OneOf label={prop.seenFrom} class="prop-sides" of={building.sides.map((value) => ({ value, name: trade.sides[value] }))} chosen={side} choose={setSide} />
        )}
        <TimeNotes bench={bench} now={now} />
        {now.second
          ? <Compare bench={bench} now={now} second={now.second} selected={selected} />
          : <Readout bench={bench} view={now.first} cutaway={cutaway} selected={selected} />}
        {!now.second && <ScaleNote small={building.small} />}
      </div>
      <div class="prop-controls">
        {bench.problem.value && <p role="alert">{bench.problem.value}</p>}
        <Tabs
          label={prop.panels} panel="prop-panel" chosen={panel} choose={(id: Panel) => setPanel(id)}
          tabs={panels}
        />
        {now.second && panel !== 'curves' && <TargetPick bench={bench} />}
        <div id="prop-panel" role="tabpanel" aria-label={prop.panel[panel]}>
          {panel === 'openings' && <OpeningsPanel bench={bench} view={acted} selected={selected} select={select} />}
          {panel === 'fuel' && <FuelPanel bench={bench} view={acted} />}
          {panel === 'water' && <WaterPanel bench={bench} view={acted} />}
          {panel === 'whatIf' && <WhatIfPanel bench={bench} now={now} selected={selected} select={select} again={again} />}
          {panel === 'curves' && <CurvesPanel bench={bench} now={now} selected={selected} />}
        </div>
        {acted.lit && <KeepMoment bench={bench} now={now} moves={acted.moves} />}
      </div>
    </div>
  )
}

const targets = ['first', 'second', 'both'] as const

/** Of two fires, the one that the panels act on; on the drawings one acts on the one that is touched. */
function TargetPick({ bench }: { bench: Bench }) {
  return (
    <div class="prop-target">
      <h2 class="label">{prop.changes}</h2>
      <div class="prop-pick" role="group" aria-label={prop.changes}>
        {targets.map((one) => (
          <button key={one} type="button" aria-pressed={bench.target.value === one} onClick={() => (bench.target.value = one)}>
            {one === 'both' ? prop.both : prop.fires[one]}
          </button>
        ))}
      </div>
    </div>
  )
}
