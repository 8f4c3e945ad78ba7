import { layered, spokenWithin, type FrameLook, type OpeningLook } from '../../render'
import { opacity } from '../../render/tone'
import { prop } from '../../words/prop'
import { degreesUnit, gasSpeed, wholeDegrees } from '../../words/units'
import type { Opening, Scenario } from '../../wire.gen'
import { SHUT } from './through'

// Two fires at one moment in numbers, and what lies between them.

/** One line of the comparison. A value that there is none of is undefined. */
export interface Difference { name: string; first: string; second: string; between: string }

interface Quantity { name: string; of(frame: FrameLook): number | undefined; say(value: number): string; /** The grain that is printed: less than half of it is no difference. */ grain: number; /** What is said where there is none of it. */ none?: string }

export function differences(scenario: Scenario, opening: Opening | undefined, first: FrameLook, second: FrameLook): Difference[] {
  return quantities(scenario, opening).map(({ name, of, say, grain, none = prop.nothing }) => {
    const [a, b] = [of(first), of(second)]
    const says = (value: number | undefined) => (value === undefined ? none : say(value))
    return { name, first: says(a), second: says(b), between: a === undefined || b === undefined ? '' : between(b - a, say, grain) }
  })
}

function between(by: number, say: (value: number) => string, grain: number): string {
  if (Math.abs(by) < grain / 2) return prop.same
  return by > 0 ? prop.more(say(by)) : prop.less(say(-by))
}

function quantities(scenario: Scenario, opening: Opening | undefined): Quantity[] {
  const list: Quantity[] = [
    { name: prop.heat, of: ({ header }) => header.hrrKW, say: prop.heatKW, grain: 0.1 },
    { name: prop.hottest, of: ({ compartments }) => wholeDegrees(Math.max(...compartments.map((one) => (layered(one) ? one.upperC : one.lowerC)))), say: (n) => `${n} ${degreesUnit()}`, grain: 1 },
    { name: prop.leastOxygen, of: leastOxygen, say: (n) => prop.percentFine(n), grain: 0.1, none: prop.noLayer },
  ]
  if (!opening) return list
  const at = scenario.openings.indexOf(opening)
  const name = spokenWithin(opening.id)
  if (opening.height_m) list.push({ name: prop.planeAt(name), of: ({ openings }) => plane(openings[at]), say: prop.percent, grain: 1 })
  const standing = ({ openings }: FrameLook) => throughIt(openings[at])
  list.push({ name: prop.speedAt(name), of: (frame) => standing(frame)?.outVelocityMS, say: gasSpeed, grain: 0.01, none: prop.gapsOnly })
  list.push({ name: prop.hiddenAt(name), of: (frame) => hidden(standing(frame)), say: prop.percent, grain: 1, none: prop.gapsOnly })
  return list
}

/** In per cent, of the layers that there are. */
function leastOxygen({ compartments }: FrameLook): number | undefined {
  const layers = compartments.filter(layered)
  return layers.length > 0 ? 100 * Math.min(...layers.map(({ o2Upper }) => o2Upper)) : undefined
}

/** An opening while it stands open: what comes at the gaps of a shut one is fast at little pressure, and compares with nothing that comes through a port. */
function throughIt(look: OpeningLook | undefined): OpeningLook | undefined {
  return look && look.open >= SHUT ? look : undefined
}

const hidden = (look: OpeningLook | undefined) => look && 100 * opacity(look.opticalDepth)

/** The neutral plane in per cent of the opening's height, where gas goes both ways. */
export function plane(look: { neutralPlane: number; flow: number } | undefined): number | undefined {
  return look && look.flow === 3 && Number.isFinite(look.neutralPlane) ? 100 * look.neutralPlane : undefined
}
