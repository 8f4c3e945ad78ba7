// The instrument that judges the picture. It is given photographs of the smoke
// at one opening and nothing of what is behind them, and says how much the
// smoke hides, how fast it moves, how light it is and how much of the opening it
// leaves by. It was finished before the picture was tuned to be true, and is
// kept as it was then: frozen.test.mjs holds its fingerprint.
import { measureCover } from './cover.mjs'
import { speedOf } from './motion.mjs'
import { readSighting } from './strip.mjs'
import { lightnessOf, opacityOf } from './tone.mjs'

/**
 * What the photographs show.
 *   opacity    share of the background hidden by the outflow, 0 to 1
 *   speed      of its texture on the picture, m/s; NaN where none can be followed
 *   lightness  of its own colour, 0 black to 1 white (L*); NaN where there is none
 *   area       share of the opening that it covers, 0 to 1
 *   beyond     speed of its texture just past the opening's upper edge, m/s: so that
 *              no picture can be true within the opening and false outside
 * @param {import('./strip.mjs').Sighting} sighting
 */
export function estimate(sighting) {
  const strip = readSighting(sighting)
  const cover = measureCover(strip, sighting.opening)
  if (cover.core.length === 0) return { opacity: 0, speed: Number.NaN, lightness: Number.NaN, area: 0, beyond: Number.NaN }
  return {
    opacity: opacityOf(strip, cover.core),
    speed: speedOf(strip, cover.core, sighting),
    lightness: lightnessOf(strip, cover.core),
    area: cover.share,
    beyond: speedBeyond(strip, sighting),
  }
}

/** How far past the opening's edge smoke is still leaving it, as a share of the opening's shorter side. Chosen by us. */
const PAST = 0.5

function speedBeyond(strip, sighting) {
  const { x0, y0, x1, y1 } = sighting.opening
  const past = PAST * Math.min(x1 - x0, y1 - y0)
  const opening = { x0: x0 - past, x1: x1 + past, y0: y0 - past, y1: y0 }
  return speedOf(strip, measureCover(strip, opening).core, { ...sighting, opening })
}
