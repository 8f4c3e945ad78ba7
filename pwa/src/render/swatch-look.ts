import book from '../generated/scales.json'
import type { Scenario } from '../wire.gen'
import type { OpeningLook } from './frame'
import { layOut } from './layout'
import type { View } from './view'

// What a rating rail's moving pictures show: one opening in a boarded wall, with
// smoke of one level of one cue.

export type SwatchCue = 'volume' | 'velocity' | 'density' | 'darkness'

export const WIDTH_M = 1.5
export const HEIGHT_M = 1.125
const OPENING = { width: 0.72, height: 0.46, sill: 0.1 }

/** Cuts of a cue in content/scales; level k lies between cut k-1 and cut k of the list filled up to five levels. */
function cutsOf(cue: SwatchCue): number[] {
  const found = book.scales.find((one) => one.cue === cue)!
  return [...Array.from({ length: found.base }, () => 0), ...found.cuts.map((cut) => cut.at)]
}

/** A value in the middle of a level: midway in ratio, since people judge by ratio; past the last cut half as much again. */
function middleOf(cue: SwatchCue, level: number): number {
  const cuts = cutsOf(cue)
  const low = cuts[level - 1] ?? 0
  const high = cuts[level] ?? 2.25 * low
  return low > 0 ? Math.sqrt(low * high) : 0.45 * high
}

/** Share of the opening that the outflow fills at each level of volume, and elsewhere. Chosen by us. */
const FILLED = [0, 0.18, 0.45, 0.8, 1] as const
const FILLED_ELSE = 0.62
/** How hot gas must be to move like each level of velocity, C: as that scale derives its cuts. */
const TEMP_C = [24, 34, 80, 220, 450] as const

/** What an opening shows at one level of one cue; every other cue is held in the middle. */
export function swatchLook(cue: SwatchCue, level: number, look: OpeningLook): OpeningLook {
  const speed = cue === 'velocity' || cue === 'volume' ? level : 2
  const froude = middleOf('velocity', speed)
  const filled = cue === 'volume' ? FILLED[level]! : FILLED_ELSE
  look.open = 1
  look.flow = 3
  look.neutralPlane = 1 - filled
  look.outVelocityMS = froude * Math.sqrt(9.81 * OPENING.height)
  look.outTempC = TEMP_C[speed]!
  look.lightness = 1 - (cue === 'darkness' && level > 0 ? Math.min(0.9, middleOf('darkness', level)) : 0.55)
  look.churning = filled > 0 ? (1.5 * froude) / Math.sqrt(filled) : 0 // the top of the band is half as fast again as its mean
  look.opticalDepth = depthOf(cue, level, froude, filled)
  return look
}

function depthOf(cue: SwatchCue, level: number, froude: number, filled: number): number {
  if (level === 0 && cue !== 'velocity') return 0
  if (cue === 'density') return middleOf('density', level)
  if (cue === 'darkness') return middleOf('density', 3)
  if (cue === 'velocity') return 2
  // Volume is K V over sqrt(g) A^(3/4); with tau = K sqrt(filled A) and V = v filled A that is the line below.
  return middleOf('volume', level) / (froude * Math.sqrt(filled) * Math.pow(OPENING.height / OPENING.width, 0.25))
}

export const scenario: Scenario = {
  v: 1, ambient: { t_c: 20 }, fuels: [], end_s: 1,
  compartments: [{ id: 'room', width_m: WIDTH_M, depth_m: 1, height_m: HEIGHT_M, floor_m: 0, lining: 'plywood' }],
  openings: [{
    id: 'opening', from: 'room', to: 'outside', side: 'A', kind: 'port', sill_m: OPENING.sill,
    width_m: OPENING.width, height_m: OPENING.height, open: 1,
  }],
}
export const view: View = {
  side: 'A', widthM: WIDTH_M, heightM: HEIGHT_M, groundM: HEIGHT_M, leftM: 0, layout: layOut(scenario), away: 1, recede: { right: 0, up: 0 },
}
