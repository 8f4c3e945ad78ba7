import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { prop } from '../../words/en/prop'
import { spoken } from '../../render'
import type { Load } from '../../buildings'
import fuels from '../../generated/fuels.json'
import type { BenchFire, Now } from './fire'

const fuelName = (id: string) => spoken(fuels.find((fuel) => fuel.id === id)?.name ?? id)

/** A load in words, with the warning that belongs to it. */
function loadName({ fuel, kg, strawKg, simulatedOnly }: Load): string {
  const name = `${fuelName(fuel)}, ${prop.amount(kg)}${strawKg ? prop.onStraw(prop.amount(strawKg)) : ''}`
  return simulatedOnly ? `${name}. ${prop.simulatedShort}` : name
}

/** Which fuel, where it is laid, and the flame to it. */
export function FuelPanel({ fire, now }: { fire: BenchFire; now: Now }) {
  const { loads, seat, scenario } = fire.building
  const [load, setLoad] = useState<Load>(loads[0]!)
  const [where, setWhere] = useState(seat)
  return (
    <div class="stack">
      <Choices
        label={prop.layFuel}
        columns={1}
        choices={loads.map((one) => ({ value: one.fuel, name: loadName(one) }))}
        chosen={load.fuel}
        choose={(id) => setLoad(loads.find((one) => one.fuel === id)!)}
      />
      {load.simulatedOnly && (
        <p class="prop-warning" role="note">
          <strong>{prop.simulatedOnly}</strong>
        </p>
      )}
      <RoomChoice label={prop.layWhere} rooms={roomsOf(scenario.compartments)} chosen={where} choose={setWhere} />
      <Button look="main" wide onClick={() => fire.lay(load, where)}>
        {now.lit ? prop.layMore : prop.layIt}
      </Button>
    </div>
  )
}

/** The compartments that a person could lay fuel in: not the void under the roof. */
export const roomsOf = (compartments: readonly { id: string }[]): string[] =>
  compartments.map(({ id }) => id).filter((id) => !/attic|void/.test(id))

interface RoomChoiceProps { label: string; rooms: readonly string[]; chosen: string; choose(id: string): void }

export function RoomChoice({ label, rooms, chosen, choose }: RoomChoiceProps) {
  return (
    <div class="stack">
      <h2 class="label">{label}</h2>
      <Choices label={label} columns={2} choices={rooms.map((id) => ({ value: id, name: spoken(id) }))} chosen={chosen} choose={choose} />
    </div>
  )
}
