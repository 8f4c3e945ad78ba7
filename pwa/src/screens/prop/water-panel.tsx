import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { prop } from '../../words/prop'
import { trade } from '../../words/trade'
import { volume, windSpeed } from '../../words/units'
import { SIDE_WORDS } from '../../wire.gen'
import type { Bench } from './bench'
import { RoomChoice, roomsOf } from './fuel-panel'
import type { View } from './view'

const speeds = [0, 2, 5, 9] as const // m/s: still, leaves rustle, a flag stands, hard to hold a map; chosen by us

/** Water into a compartment, and the wind. */
export function WaterPanel({ bench, view }: { bench: Bench; view: View }) {
  const { waterL, seat, scenario } = bench.building
  const [where, setWhere] = useState(seat)
  return (
    <div class="stack">
      <RoomChoice label={prop.sprayInto} rooms={roomsOf(scenario.compartments)} chosen={where} choose={setWhere} />
      <Button wide onClick={() => bench.spray(waterL, where)}>
        {prop.spray(volume(waterL))}
      </Button>
      <p class="small soft" aria-live="polite">{view.sprayedL > 0 ? prop.sprayed(volume(view.sprayedL)) : ' '}</p>
      <h2 class="label">{prop.wind}</h2>
      <Choices
        label={prop.wind}
        columns={4}
        choices={speeds.map((speed) => ({ value: speed, name: speed === 0 ? prop.still : windSpeed(speed) }))}
        chosen={view.windMS}
        choose={(speed) => bench.wind(speed, view.windFrom)}
      />
      <h2 class="label">{prop.windFrom}</h2>
      <Choices
        label={prop.windFrom}
        columns={4}
        choices={SIDE_WORDS.map((side) => ({ value: side, name: trade.sides[side] }))}
        chosen={view.windFrom}
        choose={(side) => bench.wind(view.windMS, side)}
      />
    </div>
  )
}
