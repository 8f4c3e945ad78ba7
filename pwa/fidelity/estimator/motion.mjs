// How fast the texture of the smoke moves where it leaves the opening: image
// correlation as in particle image velocimetry, with the correlation summed
// over many pairs of frames before its peak is sought (ensemble correlation,
// for few and faint tracers). Nothing but the change between frames is
// correlated, so that an edge which stands still says nothing.

/** Longest side of the opening after shrinking, in cells: enough for a sub-cell peak, few enough to search. Chosen by us. */
const CELLS = 30
/** A change must reach this part of the change between unrelated frames before it is tracked, and this many grey levels. Chosen by us. */
const PART = 0.35
const FAINTEST = 0.25
/** Share of the core that both frames must see. */
const OVERLAP = 0.35
/** Below this correlation there is no peak. */
const LOWEST_PEAK = 0.2

/** Speed of the texture in m/s, NaN where there is none to follow. */
export function speedOf(strip, core, { opening, secondsBetween, metresPerPixel }) {
  const film = shrink(strip, core, opening)
  if (film.cells.length < 9) return Number.NaN
  const lag = firstLag(film)
  if (lag === 0) return Number.NaN
  const near = peak(film, lag, { x: 0, y: 0 }, Math.ceil(0.6 * film.longest))
  if (!near) return Number.NaN
  // Twice the lag halves the error of the peak, as long as the texture lives that long.
  const double = 2 * lag
  const far = 2 * double < film.frames.length ? peak(film, double, { x: 2 * near.x, y: 2 * near.y }, 3) : undefined
  const best = far && far.height > 0.6 * near.height ? { x: far.x / double, y: far.y / double } : { x: near.x / lag, y: near.y / lag }
  return (Math.hypot(best.x, best.y) * film.factor * metresPerPixel) / secondsBetween
}

/** Shrinks the frames by whole factors; a cell is in the core when most of its pixels are. */
function shrink(strip, core, { x0, y0, x1, y1 }) {
  const longest = Math.max(x1 - x0, y1 - y0)
  const factor = Math.max(1, Math.floor(longest / CELLS))
  const width = Math.floor(strip.width / factor)
  const height = Math.floor(strip.height / factor)
  const count = new Uint16Array(width * height)
  for (const p of core) {
    const x = Math.floor((p % strip.width) / factor)
    const y = Math.floor(Math.floor(p / strip.width) / factor)
    if (x < width && y < height) count[y * width + x]++
  }
  const within = count.map((n) => (2 * n > factor * factor ? 1 : 0))
  const cells = [...within.keys()].filter((c) => within[c])
  const frames = strip.frames.map((frame) => [frame.overBlack, frame.overWhite].map((plane) => average(plane, strip.width, factor, width, height)))
  return { width, height, factor, within, cells, frames, longest: longest / factor }
}

function average(plane, wide, factor, width, height) {
  const out = new Float32Array(width * height)
  for (let y = 0; y < height * factor; y++) {
    const row = Math.floor(y / factor) * width
    for (let x = 0; x < width * factor; x++) out[row + Math.floor(x / factor)] += plane[y * wide + x] / (factor * factor)
  }
  return out
}

/** The first lag, in frames, at which the texture has clearly changed; 0 where it never does. */
function firstLag(film) {
  const lags = []
  for (let lag = 1; 3 * lag < film.frames.length; lag = Math.ceil(1.4 * lag)) lags.push(lag)
  const sizes = lags.map((lag) => changeSize(film, lag))
  const most = Math.max(...sizes)
  if (!(most > FAINTEST)) return 0
  return lags[sizes.findIndex((size) => size >= PART * most && size > FAINTEST)]
}

/** Root mean square of the change over a lag, in grey levels, without its mean. */
function changeSize(film, lag) {
  let sum = 0
  let n = 0
  for (let k = 0; k + lag < film.frames.length; k += lag) {
    for (const values of changes(film, k, lag)) {
      const middle = meanAt(values, film.cells)
      for (const c of film.cells) sum += (values[c] - middle) ** 2
      n += film.cells.length
    }
  }
  return Math.sqrt(sum / Math.max(1, n))
}

const meanAt = (values, cells) => cells.reduce((sum, c) => sum + values[c], 0) / cells.length

/** How the frame changes from k to k + lag, over black and over white. */
function changes(film, k, lag) {
  const known = (film.changes ??= new Map())
  const key = k * 4096 + lag
  let pair = known.get(key)
  if (!pair) {
    pair = film.frames[k + lag].map((now, channel) => {
      const before = film.frames[k][channel]
      return now.map((value, c) => value - before[c])
    })
    known.set(key, pair)
  }
  return pair
}

/** The displacement over a lag at which the changes correlate best, within `reach` cells of a guess. */
function peak(film, lag, guess, reach) {
  const at = { x: Math.round(guess.x), y: Math.round(guess.y) }
  const fewPairs = Math.max(lag, Math.ceil(film.frames.length / 12)) // enough to find the peak; all pairs then place it
  let best = { x: 0, y: 0, height: -1 }
  for (let y = at.y - reach; y <= at.y + reach; y++) {
    for (let x = at.x - reach; x <= at.x + reach; x++) {
      const shared = sharedCells(film, [{ x, y }])
      const height = shared.length < OVERLAP * film.cells.length ? -1 : correlation(film, lag, { x, y }, shared, fewPairs)
      if (height > best.height) best = { x, y, height }
    }
  }
  return best.height < LOWEST_PEAK ? undefined : { ...between(film, lag, best), height: best.height }
}

const AROUND = [-1, 0, 1].flatMap((y) => [-1, 0, 1].map((x) => ({ x, y })))

/** The peak between whole cells: the same cells are compared at all nine displacements, so that only the displacement tells. */
function between(film, lag, { x, y }) {
  const nine = AROUND.map((d) => ({ x: x + d.x, y: y + d.y }))
  const shared = sharedCells(film, nine)
  if (shared.length < 9) return { x, y }
  const at = nine.map((d) => correlation(film, lag, d, shared, Math.max(1, Math.floor(lag / 2))))
  // Least squares of a quadric through nine values (Savitzky and Golay's weights for 3 by 3).
  const sum = (weight) => AROUND.reduce((s, d, n) => s + weight(d) * at[n], 0)
  const bx = sum((d) => d.x) / 6
  const by = sum((d) => d.y) / 6
  const cxx = sum((d) => 3 * d.x * d.x - 2) / 6
  const cyy = sum((d) => 3 * d.y * d.y - 2) / 6
  const cxy = sum((d) => d.x * d.y) / 4
  const det = 4 * cxx * cyy - cxy * cxy
  if (!(det > 0 && cxx < 0)) return { x, y }
  return { x: x + clamp1((cxy * by - 2 * cyy * bx) / det), y: y + clamp1((cxy * bx - 2 * cxx * by) / det) }
}

const clamp1 = (d) => Math.max(-1, Math.min(1, d))

/** The cells of the core that stay in it under every one of some displacements. */
function sharedCells({ width, height, within, cells }, displacements) {
  return cells.filter((c) => displacements.every(({ x, y }) => {
    const px = (c % width) + x
    const py = Math.floor(c / width) + y
    return px >= 0 && py >= 0 && px < width && py < height && within[py * width + px] === 1
  }))
}

/** Correlation of every so many changes with those one lag later, moved by (x, y), over the given cells. */
function correlation(film, lag, { x, y }, shared, every) {
  if (shared.length < 9) return -1
  const shift = y * film.width + x
  let product = 0
  let first = 0
  let second = 0
  for (let k = 0; k + 2 * lag < film.frames.length; k += every) {
    const now = changes(film, k, lag)
    const later = changes(film, k + lag, lag)
    for (let channel = 0; channel < 2; channel++) {
      const sums = moments(now[channel], later[channel], shared, shift)
      product += sums.product
      first += sums.first
      second += sums.second
    }
  }
  return first > 0 && second > 0 ? product / Math.sqrt(first * second) : -1
}

/** Sums of products about the means. */
function moments(a, b, cells, shift) {
  let sa = 0
  let sb = 0
  let saa = 0
  let sbb = 0
  let sab = 0
  for (const c of cells) {
    const x = a[c]
    const y = b[c + shift]
    sa += x
    sb += y
    saa += x * x
    sbb += y * y
    sab += x * y
  }
  const n = cells.length
  return { product: sab - (sa * sb) / n, first: saa - (sa * sa) / n, second: sbb - (sb * sb) / n }
}
