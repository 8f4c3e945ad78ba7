import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { prop } from '../../words/en/prop'
import { trade } from '../../words/en/trade'
import { SIDE_WORDS } from '../../wire.gen'
import type { BenchFire, Now } from './fire'
import { RoomChoice, roomsOf } from './fuel-panel'

const speeds = [0, 2, 5, 9] as const // m/s: still, leaves rustle, a flag stands, hard to hold a map; chosen by us

/** Water into a compartment, and the wind. */
export function WaterPanel({ fire, now }: { fire: BenchFire; now: Now }) {
  const { waterL, seat, scenario } = fire.building
  const [where, setWhere] = useState(seat)
  return (
    <div class="stack">
      <RoomChoice label={prop.sprayInto} rooms={roomsOf(scenario.compartments)} chosen={where} choose={setWhere} />
      <Button wide onClick={() => fire.spray(waterL, where)}>
        {prop.spray(waterL)}
      </Button>
      <p class="small soft" aria-live="polite">{now.sprayedL > 0 ? prop.sprayed(now.sprayedL) : ' '}</p>
      <h2 class="label">{prop.wind}</h2>
      <Choices
        label={prop.wind}
        columns={4}
        choices={speeds.map((speed) => ({ value: speed, name: prop.windSpeeds[speed]! }))}
        chosen={now.windMS}
        choose={(speed) => fire.wind(speed, now.windFrom)}
      />
      <h2 class="label">{prop.windFrom}</h2>
      <Choices
        label={prop.windFrom}
        columns={4}
        choices={SIDE_WORDS.map((side) => ({ value: side, name: trade.sides[side] }))}
        chosen={now.windFrom}
        choose={(side) => fire.wind(now.windMS, side)}
      />
    </div>
  )
}
