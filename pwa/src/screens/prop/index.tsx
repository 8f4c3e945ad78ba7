import { useState } from 'preact/hooks'
import { place } from '../../app/router'
import { buildings, type Building } from '../../buildings'
import { Button } from '../../ui/button'
import { Caution } from '../../ui/caution'
import { NotValidated } from '../../ui/not-validated'
import { Page } from '../../ui/page'
import { StandingCautions } from '../../ui/standing-cautions'
import { words } from '../../words/frame'
import { burning } from '../../words/burning'
import { prop } from '../../words/prop'
import { Burning } from './burning'
import { TheBench } from './the-bench'
import { useBench } from './use-bench'
import './prop.css'
import './prop-fits.css'

/** The Prop: on the bench, simulated, or burning, logged. */
export default function Prop() {
  const live = place.value.rest[0] === 'burning'
  return (
    <Page title={words.screens.prop.name} aside={<NotValidated />} caution={<Caution />} wide>
      <nav class="prop-modes" aria-label={burning.modes}>
        <a href="/prop" aria-current={live ? undefined : 'page'}>{burning.bench}</a>
        <a href="/prop/burning" aria-current={live ? 'page' : undefined}>{burning.burning}</a>
      </nav>
      {live ? <Burning /> : <OnTheBench />}
      <StandingCautions at={live ? 'prop_burn' : 'prop'} all={live} />
    </Page>
  )
}

/** Light a building, open and shut it, and watch the smoke answer. */
function OnTheBench() {
  const [building, setBuilding] = useState<Building>(buildings[0]!)
  const { bench, failed, again } = useBench(building)
  return (
    <>
      <div class="prop-pick" role="group" aria-label={prop.building}>
        {buildings.map((one) => (
          <button key={one.id} type="button" aria-pressed={one === building} onClick={() => setBuilding(one)}>
            {prop.buildings[one.id]}
          </button>
        ))}
      </div>
      {failed && <Failed why={failed} again={again} />}
      {!failed && !bench && <p role="status" class="soft">{prop.starting}</p>}
      {bench && <TheBench key={building.id} bench={bench} again={again} />}
    </>
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
