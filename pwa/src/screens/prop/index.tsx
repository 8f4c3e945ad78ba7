import { useCallback, useEffect, useState } from 'preact/hooks'
import { buildings, type Building } from '../../buildings'
import { Scene } from '../../render'
import { Button } from '../../ui/button'
import { Caution } from '../../ui/caution'
import { NotValidated } from '../../ui/not-validated'
import { Page } from '../../ui/page'
import { Tabs } from '../../ui/tabs'
import { words } from '../../words/en'
import { prop } from '../../words/en/prop'
import { trade } from '../../words/en/trade'
import type { Side } from '../../wire.gen'
import { BenchFire } from './fire'
import { FuelPanel } from './fuel-panel'
import { OpeningsPanel } from './openings-panel'
import { Readout } from './readout'
import { TimePanel } from './time-panel'
import { WaterPanel } from './water-panel'
import './prop.css'

/** The Prop on the bench: light a building, open and shut it, and watch the smoke answer. */
export default function Prop() {
  const [building, setBuilding] = useState<Building>(buildings[0]!)
  const { fire, failed, again } = useBench(building)
  return (
    <Page title={words.screens.prop.name} aside={<NotValidated />} caution={<Caution />} wide>
      <div class="prop-pick" role="group" aria-label={prop.building}>
        {buildings.map((one) => (
          <button key={one.id} type="button" aria-pressed={one === building} onClick={() => setBuilding(one)}>
            {prop.buildings[one.id]}
          </button>
        ))}
      </div>
      {failed && <Failed why={failed} again={again} />}
      {!failed && !fire && <p role="status" class="soft">{prop.starting}</p>}
      {fire && <Bench key={building.id} fire={fire} again={again} />}
    </Page>
  )
}

function Failed({ why, again }: { why: string; again(): void }) {
  return (
    <div role="alert" class="stack">
      <p>{prop.failed}: {why}</p>
      <div><Button onClick={again}>{words.app.tryAgain}</Button></div>
    </div>
  )
}

/** A building on the bench, from cold; started over on demand. */
function useBench(building: Building) {
  const [fire, setFire] = useState<BenchFire>()
  const [failed, setFailed] = useState<string>()
  const [turn, setTurn] = useState(0)
  useEffect(() => {
    let wanted = true
    let begun: BenchFire | undefined
    setFailed(undefined)
    BenchFire.begin(building).then(
      (ready) => {
        begun = ready
        if (wanted) setFire(ready)
        else ready.close()
      },
      (error: unknown) => wanted && setFailed(error instanceof Error ? error.message : String(error)),
    )
    return () => {
      wanted = false
      begun?.close()
      setFire(undefined)
    }
  }, [building, turn])
  const again = useCallback(() => setTurn((n) => n + 1), [])
  return { fire, failed, again }
}

type Panel = keyof typeof prop.panel
const panels = (['fuel', 'openings', 'water', 'time'] as const).map((id) => ({ id, name: prop.panel[id] }))

function Bench({ fire, again }: { fire: BenchFire; again(): void }) {
  const { building } = fire
  const [side, setSide] = useState<Side>(building.sides[0]!)
  const [cutaway, setCutaway] = useState(false)
  const [selected, select] = useState<string | undefined>(building.scenario.openings[0]?.id)
  const [panel, setPanel] = useState<Panel>('fuel')
  const now = fire.now.value
  if (!now) return null
  return (
    <div class="prop-bench">
      <div class="prop-view">
        <div class="prop-watch">
          <Scene
            scenario={building.scenario} side={side} frame={fire.frame} cutaway={cutaway} selected={selected}
            onPick={select} onOpen={(id, open) => { select(id); fire.setOpening(id, open) }}
            wind={{ m_s: now.windMS, from: now.windFrom }} paused={fire.paused.value}
          />
          <div class="prop-clock" role="timer" aria-label={prop.clockLabel}>{prop.clock(now.tS)}</div>
          <Bar fire={fire} lit={now.lit} cutaway={cutaway} cut={setCutaway} />
        </div>
        {building.sides.length > 1 && <SidePick sides={building.sides} side={side} choose={setSide} />}
        <Readout fire={fire} now={now} cutaway={cutaway} selected={selected} />
      </div>
      <div class="prop-controls">
        {fire.problem.value && <p role="alert">{fire.problem.value}</p>}
        <Tabs
          label={prop.panels} panel="prop-panel" chosen={panel} choose={(id: Panel) => setPanel(id)}
          tabs={panels}
        />
        <div id="prop-panel" role="tabpanel" aria-label={prop.panel[panel]}>
          {panel === 'openings' && <OpeningsPanel fire={fire} now={now} selected={selected} select={select} />}
          {panel === 'fuel' && <FuelPanel fire={fire} now={now} />}
          {panel === 'water' && <WaterPanel fire={fire} now={now} />}
          {panel === 'time' && <TimePanel fire={fire} again={again} />}
        </div>
      </div>
    </div>
  )
}

/** Under the thumb: light it, then pause, and draw the wall away. */
function Bar({ fire, lit, cutaway, cut }: { fire: BenchFire; lit: boolean; cutaway: boolean; cut(away: boolean): void }) {
  const { loads, seat } = fire.building
  const load = loads[0]!
  return (
    <div class="prop-bar">
      {lit ? (
        <Button onClick={() => (fire.paused.value = !fire.paused.value)}>{fire.paused.value ? prop.goOn : prop.pause}</Button>
      ) : (
        <Button look="main" onClick={() => fire.lay(load, seat)}>{prop.light}</Button>
      )}
      <Button onClick={() => cut(!cutaway)} aria-pressed={cutaway}>{cutaway ? prop.putBack : prop.drawAway}</Button>
    </div>
  )
}

function SidePick({ sides, side, choose }: { sides: readonly Side[]; side: Side; choose(side: Side): void }) {
  return (
    <div class="prop-sides" role="group" aria-label={prop.seenFrom}>
      {sides.map((one) => (
        <button key={one} type="button" aria-pressed={one === side} onClick={() => choose(one)}>{trade.sides[one]}</button>
      ))}
    </div>
  )
}
