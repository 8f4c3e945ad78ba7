import { picture } from '../words/en/picture'
import { trade } from '../words/en/trade'
import { scale } from '../words/scales'
import type { Scenario, Side } from '../wire.gen'
import type { FrameLook, OpeningLook } from './frame'
import { layOut, type Place } from './layout'
import { churnOf, flameLength, hidden } from './jet'
import { openingName } from './names'
import { opacity } from './tone'
import { facingOf, frameView } from './view'

// The picture's twin in words. It gives what an eye could measure (tenths
// hidden, seconds to cross the opening) at the grain of the picture, and the
// shade in the looks that the scale itself goes by, as no listener could know
// where on a run of greys its cuts lie. A rating's number or name is never said.

/** Sentences that state what is visible on one side. */
export function describe(frame: FrameLook, scenario: Scenario, side: Side): string[] {
  const view = frameView(layOut(scenario), side, 1)
  const said = [picture.side(trade.sides[side])]
  const wind = windWords(scenario, side)
  if (wind) said.push(wind)
  let behind = false
  for (const place of view.layout.places) {
    const look = frame.openings[place.index]
    const facing = facingOf(view, place)
    if (!look || !facing) continue
    if (hidden(facing)) behind ||= smokes(look)
    else said.push(`${sentence(place, look)}.`)
  }
  if (behind) said.push(picture.behind)
  return said
}

const smokes = (look: OpeningLook) => look.opticalDepth > 0.02 && look.outVelocityMS > 0.005

function sentence(place: Place, look: OpeningLook): string {
  const parts = [picture.opening(openingName(place.opening), look.open)]
  if (smokes(look)) parts.push(...smokeWords(place, look))
  else if (look.flow !== 1) parts.push(picture.nothing)
  if (flameLength(look) > 0.3 * (place.z1 - place.z0)) parts.push(picture.flame)
  const inward = inwardWords(place, look)
  if (inward) parts.push(inward)
  return parts.join('; ')
}

/** A hole that lies level: it has no part above and none below. */
const lying = (place: Place) => place.z0 === place.z1
const isShut = (look: OpeningLook) => look.open < 0.02

function inwardWords(place: Place, look: OpeningLook): string | undefined {
  if (look.flow !== 1 && look.flow !== 3) return undefined
  if (isShut(look)) return picture.drawnInGaps
  if (lying(place)) return picture.drawnDown
  return look.flow === 1 ? picture.drawnInAll : picture.drawnIn
}

function smokeWords(place: Place, look: OpeningLook): string[] {
  const plane = Number.isFinite(look.neutralPlane) ? Math.max(0, Math.min(1, look.neutralPlane)) : 0
  const parts: string[] = [isShut(look) ? picture.crack : lying(place) ? picture.rises : picture.fills(Math.round(10 * (1 - plane)))]
  parts.push(picture.hides(Math.round(10 * opacity(look.opticalDepth))))
  if (look.opticalDepth > 6) parts.push(picture.folded)
  const shade = SHADES.get(look.darkness)
  if (shade) parts.push(picture.grey(shade) + (look.tint > 0.3 ? `, ${picture.brown}` : ''))
  parts.push(speedWords(place, look))
  parts.push(churnOf(look) > 0.4 ? picture.rolling : picture.smooth)
  if (look.pulsing > 4) parts.push(picture.breathing)
  if (look.steam > 0.6) parts.push(picture.vanishing)
  return parts
}

function speedWords(place: Place, look: OpeningLook): string {
  const height = place.z1 - place.z0 || place.x1 - place.x0
  const seconds = height / look.outVelocityMS
  return seconds > 20 ? picture.still : picture.speed(Number(seconds.toPrecision(1)))
}

/** How each level of darkness looks, in the words of content/scales. */
const SHADES = new Map(scale('darkness').levels.slice(1).map(({ level, looks }) => [level, looks]))

function windWords(scenario: Scenario, side: Side): string | undefined {
  const { wind_m_s: speed, wind_from: from } = scenario.ambient
  if (!speed || !from) return undefined
  const order = ['A', 'B', 'C', 'D']
  const turned = (order.indexOf(from) - order.indexOf(side) + 4) % 4
  return [picture.wind.front, picture.wind.left, picture.wind.behind, picture.wind.right][turned]
}
