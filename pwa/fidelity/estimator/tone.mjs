// How much the smoke hides and how light it is by itself.
import { burns } from './cover.mjs'

/** Mean share hidden in the core, as a lamp and a photocell across it would read. */
export function opacityOf(strip, core) {
  return meanOver(strip, core, (frame, p) => frame.hidden[p])
}

/**
 * Lightness of the smoke's own colour, 0 black to 1 white: CIE 1976 L*, which
 * an eye judges by, of the colour that is left when what shines through is
 * taken off. NaN where no smoke can be seen.
 */
export function lightnessOf(strip, core) {
  const hidden = meanOver(strip, core, (frame, p) => frame.hidden[p])
  if (!(hidden > 0)) return Number.NaN
  const [red, green, blue] = ['red', 'green', 'blue'].map((name) => meanOver(strip, core, (frame, p) => frame[name][p]) / hidden)
  return lstar(0.2126 * linear(red) + 0.7152 * linear(green) + 0.0722 * linear(blue))
}

function meanOver(strip, core, value) {
  let sum = 0
  let n = 0
  for (const frame of strip.frames) {
    for (const p of core) {
      if (burns(frame, p)) continue
      sum += value(frame, p)
      n++
    }
  }
  return n > 0 ? sum / n : Number.NaN
}

/** Relative luminance of a channel: IEC 61966-2-1. */
function linear(byte) {
  const c = Math.max(0, Math.min(1, byte / 255))
  return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4
}

/** CIE 1976 L* as a share: CIE 15:2004, section 8.2.1. */
const lstar = (y) => (y > 216 / 24389 ? 1.16 * Math.cbrt(y) - 0.16 : (24389 / 27 / 100) * y)
