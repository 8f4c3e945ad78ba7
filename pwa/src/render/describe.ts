import { scene as words } from '../words/scene'
import { trade } from '../words/trade'
import type { Scenario, Side } from '../wire.gen'
import type { Daylight } from './draw/palette'
import { eavesOf, holdOf } from './eaves'
import type { FrameLook, OpeningLook } from './frame'
import { SEEN_KW } from './draw/flame'
import { glassOf, seenThrough, STAINED } from './glass'
import { churnOf, flameLength, heatOf, hidden, type Facing } from './jet'
import { layOut, type Place } from './layout'
import { openingName } from '../words/names'
import { opacity } from './tone'
import { facingOf, frameView, openArea, type View } from './view'

// The picture's twin in words. It gives what an eye could measure (tenths
// hidden, tenths from white to black, seconds to cross the opening) at the grain
// of the picture. A rating's number, name or look is never said: where on these
// measures its cuts lie is for the listener to know, as for the one who looks.

/** How the scene is seen, where that is known. */
export interface Seen { far?: boolean; light?: Daylight; wind?: { m_s: number; from: Side | undefined } }

/** Sentences that state what is visible on one side. */
export function describe(frame: FrameLook, scenario: Scenario, side: Side, seen: Seen = {}): string[] {
  const view = frameView(layOut(scenario), side, 1)
  const slot = { side: trade.sides[side] }
  const said: string[] = [seen.far ? words.seenFar(slot) : words.seen(slot)]
  if (seen.light) said.push(words.light[seen.light])
  let behind = false
  let shows = false
  for (const place of view.layout.places) {
    const look = frame.openings[place.index]
    const facing = facingOf(view, place)
    if (!look || !facing) continue
    shows ||= smokes(look)
    if (hidden(facing)) behind ||= smokes(look)
    else said.push(...openingWords(view, place, facing, look, frame, scenario.ambient.t_c))
  }
  if (behind) said.push(words.behind)
  said.splice(seen.light ? 2 : 1, 0, ...windWords(scenario, side, seen, shows))
  return said
}

const smokes = (look: OpeningLook) => look.opticalDepth > 0.02 && look.outVelocityMS > 0.005

function openingWords(view: View, place: Place, facing: Facing, look: OpeningLook, frame: FrameLook, outsideC: number): string[] {
  const said = [stands(place, look), ...glassWords(view, place, look, frame)]
  if (smokes(look)) {
    said.push(...smokeWords(place, look))
    if (facing === 'eye' && banks(view, place, look, outsideC)) said.push(words.banks)
  } else if (look.flow !== 1) said.push(words.nothing)
  const heights = flameLength(look) / heightOf(place)
  if (heights > 0.3) said.push(words.flame({ heights }))
  else if (facing === 'eye' && firesBehind(view, place, look, frame)) said.push(words.fireInside)
  const inward = inwardWords(place, look)
  return inward ? [...said, inward] : said
}

/** What comes out of one opening in sight, and nothing else of the scene. */
export const smokeTwin = (place: Place, look: OpeningLook): string[] => (smokes(look) ? smokeWords(place, look) : [words.nothing])

function stands(place: Place, look: OpeningLook): string {
  const opening = openingName(place.opening)
  if (place.opening.kind === 'leak') return words.vent({ opening })
  if (isShut(look)) return words.shut({ opening })
  return look.open > 0.98 ? words.open({ opening }) : words.part({ opening, share: Math.round(10 * look.open) })
}

/** What a pane shows; nothing for an opening without one. */
function glassWords(view: View, place: Place, look: OpeningLook, frame: FrameLook): string[] {
  if (place.opening.kind !== 'window') return []
  const glass = glassOf(view, place, frame)
  if (look.open > 0.98) return glass.crazed ? [words.glassBroken] : []
  const said: string[] = []
  const share = Math.round((10 * (place.z1 - glass.layerM)) / (place.z1 - place.z0))
  if (share > 0 && opacity(glass.depth) > 0.15 && glass.film < 2) said.push(words.glassSmoky({ share }))
  if (glass.film > STAINED) said.push(words.glassStained({ hidden: Math.round(10 * opacity(glass.film)) }))
  if (glass.crazed) said.push(words.glassCrazed)
  return said.length > 0 ? said : [words.glassClear]
}

/** A hole that lies level: it has no part above and none below. */
const lying = (place: Place) => place.z0 === place.z1
const heightOf = (place: Place) => place.z1 - place.z0 || place.x1 - place.x0
const isShut = (look: OpeningLook) => look.open < 0.02

function inwardWords(place: Place, look: OpeningLook): string | undefined {
  if (look.flow !== 1 && look.flow !== 3) return undefined
  if (isShut(look)) return words.drawnInGaps
  if (lying(place)) return words.drawnDown
  return look.flow === 1 ? words.drawnInAll : words.drawnIn
}

function smokeWords(place: Place, look: OpeningLook): string[] {
  const said: string[] = [whence(place, look), words.hides({ share: Math.round(10 * opacity(look.opticalDepth)) })]
  if (look.opticalDepth > 6) said.push(words.folded)
  said.push(words.shade({ tenths: Math.round(10 * (1 - look.lightness)) }))
  if (look.tint > 0.3) said.push(words.brown)
  const seconds = heightOf(place) / look.outVelocityMS
  said.push(seconds > 20 ? words.still : words.speed({ seconds: Number(seconds.toPrecision(1)) }))
  said.push(churnOf(look) > 0.4 ? words.rolling : words.smooth)
  if (look.pulsing > 4) said.push(words.breathing({ perMinute: Math.round(look.pulsing / 2) }))
  if (look.steam > 0.6) said.push(words.vanishing)
  return said
}

function whence(place: Place, look: OpeningLook): string {
  if (isShut(look)) return words.outAtEdge
  if (lying(place)) return words.column
  const plane = Number.isFinite(look.neutralPlane) ? Math.max(0, Math.min(1, look.neutralPlane)) : 0
  const share = Math.round(10 * (1 - plane))
  return share >= 10 ? words.outOfAll : words.outAbove({ share })
}

/** From this share of its rise held back, one sees smoke bank under an eave. Chosen by us, by eye. */
const BANKS = 0.35

function banks(view: View, place: Place, look: OpeningLook, outsideC: number): boolean {
  const area = openArea(view, place, 1)
  return eavesOf(view).some((eave) => holdOf(eave, area, look.outVelocityMS, heatOf(look, outsideC)) > BANKS)
}

/** Whether the fire in the room behind can be seen through it, as the picture draws it. */
function firesBehind(view: View, place: Place, look: OpeningLook, frame: FrameLook): boolean {
  const room = frame.compartments[view.layout.boxes.findIndex(({ id }) => id === place.opening.from)]
  return seenThrough(view, place, frame) > 0.2 && (room?.hrrKW ?? 0) > SEEN_KW && !(smokes(look) && opacity(look.opticalDepth) > 0.85 && look.flow === 2)
}

function windWords(scenario: Scenario, side: Side, seen: Seen, shows: boolean): string[] {
  const speed = seen.wind?.m_s ?? scenario.ambient.wind_m_s ?? 0
  const from = seen.wind?.from ?? scenario.ambient.wind_from
  if (!(speed > 0.3) || !from) return []
  const order = ['A', 'B', 'C', 'D']
  const turned = (order.indexOf(from) - order.indexOf(side) + 4) % 4
  const said: string[] = [[words.wind.front, words.wind.left, words.wind.behind, words.wind.right][turned]!]
  if (shows && turned % 2 === 1) said.push(turned === 1 ? words.bends.right : words.bends.left)
  return said
}
