import { spokenWithin, type FrameLook } from '../../render'
import { opacity } from '../../render/tone'
import { prop } from '../../words/prop'
import { gasSpeed, temperature, warmer } from '../../words/units'
import type { Opening, Scenario } from '../../wire.gen'

// Two fires at one moment in numbers, and what lies between them.

/** One line of the comparison. A value that there is none of is undefined. */
export interface Difference { name: string; first: string; second: string; between: string }

interface Quantity { name: string; of(frame: FrameLook): number | undefined; say(value: number): string; /** How much lies between two values, where that is said in another way. */ differ?(by: number): string; /** The grain that is printed: less than half of it is no difference. */ grain: number }

export function differences(scenario: Scenario, opening: Opening | undefined, first: FrameLook, second: FrameLook): Difference[] {
  return quantities(scenario, opening).map(({ name, of, say, differ, grain }) => {
    const [a, b] = [of(first), of(second)]
    const says = (value: number | undefined) => (value === undefined ? prop.nothing : say(value))
    return { name, first: says(a), second: says(b), between: a === undefined || b === undefined ? '' : between(b - a, differ ?? say, grain) }
  })
}

function between(by: number, say: (value: number) => string, grain: number): string {
  if (Math.abs(by) < grain / 2) return prop.same
  return by > 0 ? prop.more(say(by)) : prop.less(say(-by))
}

function quantities(scenario: Scenario, opening: Opening | undefined): Quantity[] {
  const list: Quantity[] = [
    { name: prop.heat, of: ({ header }) => header.hrrKW, say: prop.heatKW, grain: 0.1 },
    { name: prop.hottest, of: ({ compartments }) => Math.max(...compartments.map(({ upperC }) => upperC)), say: temperature, differ: warmer, grain: 1 },
    { name: prop.leastOxygen, of: ({ compartments }) => 100 * Math.min(...compartments.map(({ o2Upper }) => o2Upper)), say: (n) => prop.percentFine(n), grain: 0.1 },
  ]
  if (!opening) return list
  const at = scenario.openings.indexOf(opening)
  const name = spokenWithin(opening.id)
  if (opening.height_m) list.push({ name: prop.planeAt(name), of: ({ openings }) => plane(openings[at]), say: prop.percent, grain: 1 })
  list.push({ name: prop.speedAt(name), of: ({ openings }) => openings[at]?.outVelocityMS, say: gasSpeed, grain: 0.01 })
  list.push({ name: prop.hiddenAt(name), of: ({ openings }) => 100 * opacity(openings[at]?.opticalDepth ?? 0), say: prop.percent, grain: 1 })
  return list
}

/** The neutral plane in per cent of the opening's height, where gas goes both ways. */
export function plane(look: { neutralPlane: number; flow: number } | undefined): number | undefined {
  return look && look.flow === 3 && Number.isFinite(look.neutralPlane) ? 100 * look.neutralPlane : undefined
}
