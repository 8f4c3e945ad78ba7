import { useState } from 'preact/hooks'
import { Button } from '../../ui/button'
import { Choices } from '../../ui/choices'
import { prop } from '../../words/prop'
import { mass } from '../../words/units'
import { spoken } from '../../render'
import type { Load } from '../../buildings'
import { fuelName } from './moves'
import type { Bench } from './bench'
import type { View } from './view'

/** A load in words, with the warning that belongs to it. */
function loadName({ parts, simulatedOnly }: Load): string {
  const amounts = parts.map(({ fuel, kg }) => prop.amount(fuelName(fuel), mass(kg)))
  const name = amounts.length > 1 ? prop.amounts(amounts[0]!, amounts[1]!) : amounts[0]!
  return simulatedOnly ? prop.amountSimulated(name) : name
}

/** Which fuel, where it is laid, and the flame to it. */
export function FuelPanel({ bench, view }: { bench: Bench; view: View }) {
  const { loads, seat, scenario } = bench.building
  const [load, setLoad] = useState<Load>(loads[0]!)
  const [where, setWhere] = useState(seat)
  return (
    <div class="stack">
      <Choices
        label={prop.layFuel}
        columns={1}
        choices={loads.map((one) => ({ value: one.id, name: loadName(one) }))}
        chosen={load.id}
        choose={(id) => setLoad(loads.find((one) => one.id === id)!)}
      />
      {load.simulatedOnly && (
        <p class="prop-warning" role="note">
          <strong>{prop.simulatedOnly}</strong>
        </p>
      )}
      <RoomChoice label={prop.layWhere} rooms={roomsOf(scenario.compartments)} chosen={where} choose={setWhere} />
      <Button look="main" wide onClick={() => { bench.lay(load, where); if (!view.lit) bench.setPaused(false) }}>
        {view.lit ? prop.layMore : prop.layIt}
      </Button>
    </div>
  )
}

/** The compartments that a person could lay fuel in: not the space above them. */
export const roomsOf = (compartments: readonly { id: string }[]): string[] =>
  compartments.map(({ id }) => id).filter((id) => !/attic|void|ceiling_space/.test(id))

interface RoomChoiceProps { label: string; rooms: readonly string[]; chosen: string; choose(id: string): void }

export function RoomChoice({ label, rooms, chosen, choose }: RoomChoiceProps) {
  return (
    <div class="stack">
      <h2 class="label">{label}</h2>
      <Choices label={label} columns={2} choices={rooms.map((id) => ({ value: id, name: spoken(id) }))} chosen={chosen} choose={choose} />
    </div>
  )
}
