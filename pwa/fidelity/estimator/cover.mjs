// Which part of the opening the outflow covers, and how much it hides there.

// A pixel counts as covered where it hides at least half of what the densest
// fifth of the opening hides: the half-way contour is where an eye sees an edge,
// and a blur of the edge does not move it. Chosen by us.
const DENSEST = 0.8
const HALF = 0.5
// Under three grey levels of 255 nothing can be told from rounding.
const FAINTEST = 3 / 255
// Strong orange is burning gas, which hides the smoke. The brownest smoke keeps
// over half of its red in its blue (single scattering albedo 0.91 at 405 nm
// against 0.99 at 660 nm: Pokhrel et al. 2016); a flame keeps far less.
const FLAME_SATURATION = 0.62

/** Measures the cover of an opening: its share, and for every pixel the share of frames in which it is covered. */
export function measureCover(strip, opening) {
  const inside = pixelsOf(strip, opening)
  const full = densest(strip, inside)
  const often = new Float32Array(strip.width * strip.height)
  const none = { share: 0, full, often, core: [] }
  if (full < FAINTEST) return none
  let covered = 0
  for (const frame of strip.frames) {
    for (const p of inside) {
      if (frame.hidden[p] < HALF * full) continue
      often[p] += 1 / strip.frames.length
      covered++
    }
  }
  return { share: covered / (inside.length * strip.frames.length), full, often, core: coreOf(strip, opening, inside, often) }
}

/** The pixels whose middles lie in a rectangle. */
function pixelsOf({ width, height }, { x0, y0, x1, y1 }) {
  const list = []
  for (let y = Math.max(0, Math.round(y0)); y < Math.min(height, Math.round(y1)); y++) {
    for (let x = Math.max(0, Math.round(x0)); x < Math.min(width, Math.round(x1)); x++) list.push(y * width + x)
  }
  return list
}

const BINS = 1024

/** What the densest fifth of the opening hides, over all frames; counted in bins finer than a grey level. */
function densest(strip, inside) {
  const bins = new Uint32Array(BINS + 1)
  for (const frame of strip.frames) for (const p of inside) bins[Math.round(BINS * frame.hidden[p])]++
  let left = (1 - DENSEST) * inside.length * strip.frames.length
  let bin = BINS
  while (bin > 0 && left > bins[bin]) left -= bins[bin--]
  return bin / BINS
}

// The core is what is covered in nearly every frame and lies this far, as a
// share of the shorter side of the covered part, from any edge. Chosen by us.
const NEARLY_ALWAYS = 0.95
const MARGIN = 0.14

/** The pixels well within the outflow, or, where it is too thin a band for that, those that are covered most often. */
function coreOf({ width, height }, opening, inside, often) {
  const held = new Uint8Array(width * height)
  let n = 0
  for (const p of inside) if (often[p] >= NEARLY_ALWAYS) held[p] = ++n && 1
  const across = Math.max(1, opening.x1 - opening.x0)
  const margin = Math.max(1, Math.round(MARGIN * Math.min(across, n / across)))
  const core = inside.filter((p) => held[p] && deep(held, width, height, p, margin))
  if (core.length >= 12) return core
  return inside.toSorted((p, q) => often[q] - often[p]).slice(0, Math.max(4, Math.ceil(0.5 * inside.length * mean(inside, often))))
}

const mean = (pixels, plane) => pixels.reduce((sum, p) => sum + plane[p], 0) / Math.max(1, pixels.length)

/** Whether everything within the margin, straight and askew, is held too. */
function deep(held, width, height, p, margin) {
  const x = p % width
  const y = (p - x) / width
  for (const [dx, dy] of [[1, 0], [-1, 0], [0, 1], [0, -1], [1, 1], [-1, 1], [1, -1], [-1, -1]]) {
    const px = x + dx * margin
    const py = y + dy * margin
    if (px < 0 || py < 0 || px >= width || py >= height || !held[py * width + px]) return false
  }
  return true
}

/** Whether a pixel shows burning gas. */
export function burns(frame, p) {
  const red = frame.red[p]
  return red > 60 && red > frame.green[p] && (red - frame.blue[p]) / red > FLAME_SATURATION
}
