import { spokenWithin, type OpeningLook } from '../../render'
import { prop } from '../../words/prop'
import type { Opening, Scenario } from '../../wire.gen'

// What passes an opening, in words. A shut panel leaks at its gaps only; a hole
// that lies level has an up and a down but no part above and none below; and of
// an opening inside, only which way gas goes can be said, not whether it is air.

/** Smoke thinner than this is not seen as smoke: a twentieth of the light, chosen by us. */
const SEEN_DEPTH = 0.05
/** Below this share of opening a panel counts as shut, as in the picture. */
export const SHUT = 0.02

const LYING = new Set<Opening['kind']>(['floor_hole', 'ceiling_hatch', 'roof_hatch'])

/** What passes an opening now. */
export function through(scenario: Scenario, opening: Opening, look: OpeningLook): string {
  const shut = look.open < SHUT
  if (LYING.has(opening.kind)) return atGaps(shut, lying(scenario, opening, look))
  if (opening.to !== 'outside') return atGaps(shut, inside(opening, look))
  const { upright, faint, gaps, faintGaps } = prop.flow
  const seen = look.opticalDepth > SEEN_DEPTH
  const words = shut ? (seen ? gaps : faintGaps) : seen ? upright : faint
  return words[look.flow] ?? prop.nothingMoves
}

const atGaps = (shut: boolean, what: string) => (shut && what !== prop.through.none ? prop.through.atGaps(what) : what)

/** "Out" leads from the compartment that an opening belongs to: up through a ceiling, down through a floor. */
function lying({ compartments }: Scenario, { from, to }: Opening, { flow, opticalDepth }: OpeningLook): string {
  const floor = (id: string) => compartments.find((one) => one.id === id)?.floor_m ?? Infinity
  const { none, up, down, upAndDown } = prop.through
  const outIsUp = floor(to) > floor(from)
  if (to === 'outside' && flow === 2 && opticalDepth > SEEN_DEPTH) return prop.through.smokeUp
  if (to === 'outside' && flow === 1) return prop.through.airDown
  return [none, outIsUp ? down : up, outIsUp ? up : down, upAndDown][flow] ?? none
}

function inside({ from, to }: Opening, { flow }: OpeningLook): string {
  const { none, to: into, bothWays } = prop.through
  return [none, into(spokenWithin(from)), into(spokenWithin(to)), bothWays(spokenWithin(to), spokenWithin(from))][flow] ?? none
}
