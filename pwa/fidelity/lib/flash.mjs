// Counts flashes in frames of relative luminance, as WCAG 2.2 defines them:
// success criterion 2.3.1 and its terms "general flash" and "general flash and
// red flash thresholds" (W3C Recommendation, 2023). A flash is a pair of opposing
// changes of relative luminance of 10 % of the maximum or more, where the darker
// image is below 0.80. It counts where flashes that occur together cover a
// quarter of some field of 10 degrees, which the terms put at 341 by 256 pixels.

const CHANGE = 0.1
const DARKER_BELOW = 0.8
const FIELD = { width: 341, height: 256 }
const QUARTER = 0.25

/** Moments, as frame numbers, at which the luminance of one place has turned round by enough. */
export function turns(values) {
  const at = []
  let bottom = values[0]
  let top = values[0]
  let way = 0
  values.forEach((now, k) => {
    bottom = Math.min(bottom, now)
    top = Math.max(top, now)
    const fell = way >= 0 && top - now >= CHANGE && now < DARKER_BELOW
    const rose = way <= 0 && now - bottom >= CHANGE && bottom < DARKER_BELOW
    if (!fell && !rose) return
    at.push(k)
    way = fell ? -1 : 1
    bottom = now
    top = now
  })
  return at
}

/** Flashes within each second that starts at a turn, for one place: pairs of turns. The most of them. */
const most = (at, perSecond) => Math.max(0, ...at.map((from) => Math.floor(at.filter((k) => k >= from && k < from + perSecond).length / 2)))

/**
 * The most flashes in any second. `frames` hold relative luminance, `width` to a
 * row, each place `side` pixels wide and high. `anywhere` is in a single place;
 * `field` is what a quarter of some field does in the same second.
 */
export function countFlashes(frames, { width, side, perSecond }) {
  const places = frames[0].length
  const turned = Array.from({ length: places }, (_, p) => turns(frames.map((frame) => frame[p])))
  const anywhere = Math.max(0, ...turned.map((at) => most(at, perSecond)))
  let field = 0
  for (const from of new Set(turned.flat())) {
    const counts = turned.map((at) => Math.floor(at.filter((k) => k >= from && k < from + perSecond).length / 2))
    field = Math.max(field, inSomeField(counts, width, side))
  }
  return { anywhere, field }
}

/** The number of flashes that a quarter of some field reaches. */
function inSomeField(counts, width, side) {
  const height = counts.length / width
  const across = Math.min(width, Math.ceil(FIELD.width / side))
  const down = Math.min(height, Math.ceil(FIELD.height / side))
  const enough = Math.ceil((QUARTER * FIELD.width * FIELD.height) / (side * side))
  let best = 0
  for (let level = 1; counts.some((n) => n >= level); level++) {
    const sums = summed(counts.map((n) => (n >= level ? 1 : 0)), width, height)
    const at = (x, y) => sums[y * (width + 1) + x]
    for (let y = 0; y + down <= height; y++) {
      for (let x = 0; x + across <= width; x++) {
        if (at(x + across, y + down) - at(x, y + down) - at(x + across, y) + at(x, y) >= enough) best = level
      }
    }
  }
  return best
}

/** Sums of everything above and to the left, with a border of zeros. */
function summed(flags, width, height) {
  const out = new Uint32Array((width + 1) * (height + 1))
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const p = (y + 1) * (width + 1) + x + 1
      out[p] = flags[y * width + x] + out[p - 1] + out[p - width - 1] - out[p - width - 2]
    }
  }
  return out
}
