// Renderers that lie, as controls: each draws another state than it is given.
// The instrument must find every one of them out.
import { DEPTHS, FROUDES } from './scenes.mjs'

/** Where a value lies in a range, judged by ratio: 0 to 1. */
const place = (value, [low, high]) => Math.max(0, Math.min(1, Math.log(value / low) / Math.log(high / low)))
const at = (share, [low, high]) => low * (high / low) ** share

export const LIES = {
  'speed and opacity swapped': (look, root) => ({
    ...look,
    outVelocityMS: root * at(place(look.opticalDepth, DEPTHS), FROUDES),
    opticalDepth: at(place(look.outVelocityMS / root, FROUDES), DEPTHS),
  }),
  'lightness inverted': (look) => ({ ...look, lightness: 1 - look.lightness }),
  'one speed': (look, root) => ({ ...look, outVelocityMS: 0.3 * root }),
  'one outlet': (look) => ({ ...look, open: 1, neutralPlane: 0.4 }),
}
