import { sharp } from './blur'
import { FIELDS, FIRE, GRAIN_X, GRAIN_Y, HEAT, KINDS, LIGHT, MASS, STEAM, TAU, TINT, type Grid, type Smoke } from './fluid/grid'
import { STEP_S } from './fluid/step'
import { flameLength, heatOf, hidden, slantOf, type Jet, type Rect } from './jet'
import type { Noise } from './noise'
import { depthInPart, veil } from './tone'

// Puts what leaves an opening into the fluid: its shape on the fine grid over
// the outflow's area; colour, heat, velocity and spread on the coarse one. The profile
// over height is the square root of the height above the neutral plane, as
// Bernoulli gives it for a hot room (physics of vent flow; trade texts, 2.1).

/**
 * Stamps one jet, of which `left` lumps have left before, one above the other;
 * returns how many more leave in this step. Lumps are counted and not metres: where
 * the outflow grows so do they, and those that have left must not be counted anew
 * by the new size, or what is drawn would run far faster than the gas does.
 */
export function stamp(grid: Grid, jet: Jet, left: number, noise: Noise, time: number): number {
  const { look } = jet
  if (!(jet.depth > 0.01 || look.flameKW > 0) || !(look.outVelocityMS > 0.005)) return 0
  // A churning outflow comes in puffs, about two a second; a smooth one is steady. Chosen by us.
  const puff = 1 + 0.16 * jet.churn * noise.rough(time * 2.1, jet.seed * 9.7)
  const speed = look.outVelocityMS * puff
  const smoke = hidden(jet.facing) ? grid.back : grid.front
  stampSmoke(grid, smoke, jet, left, noise)
  stampAir(grid, smoke, jet, speed)
  return (speed * STEP_S) / highOf(jet, grid)
}

/** Mean of sqrt(x) over 0 to 1 is 2/3, so this profile has the mean speed asked for. */
const profile = (share: number) => 1.5 * Math.sqrt(share < 0 ? 0 : share > 1 ? 1 : share)

function stampSmoke(grid: Grid, smoke: Smoke, jet: Jet, left: number, noise: Noise): void {
  const { area, plane } = jet
  const fineM = grid.cellM / 2
  const broad = Math.max(grainOf(jet), NARROWEST * fineM)
  const high = highOf(jet, grid)
  const rises = upward(jet)
  const takesIn = !rises && plane < area.y1
  const wave = waveOf(jet, grid)
  const i0 = Math.max(1, Math.floor(area.x0 / fineM))
  const i1 = Math.min(2 * grid.nx, Math.ceil(area.x1 / fineM) + 1)
  const j0 = Math.max(1, Math.floor(area.y0 / fineM))
  const j1 = Math.min(2 * grid.ny, Math.ceil(area.y1 / fineM) + 1)
  const rim = jet.facing === 'eye' ? 0.5 * fineM : 0
  const band = bandOf(jet)
  const flame = flameReach(jet)
  const strength = flameStrength(jet)
  const ripple = jet.seed + RIPPLES * left // the boundary ripples as fast as the smoke above it moves
  const tongue = area.x1 - area.x0 < NARROW_CELLS * fineM ? 0 : 0.6
  const f = smoke.now
  for (let i = i0; i <= i1; i++) {
    const x = (i - 0.5) * fineM
    const gx = (x - area.x1) / broad + jet.seed * 7.31
    const edge = plane + wave * noise.at(gx + 3.3, ripple)
    for (let j = j0; j <= j1; j++) {
      const y = (j - 0.5) * fineM
      const gy = left + (y - area.y0) / high
      const above = rises ? 1 : inside(y, 2 * area.y0 - edge, Math.min(edge, area.y1), fineM)
      const cover = rises ? round(area, x, y) : above > 0 ? inside(x, area.x0 - rim, area.x1 + rim, fineM) * inside(y, area.y0 - rim, area.y1 + fineM, fineM) : 0
      if (takesIn && y > edge) drawIn(f, (j * grid.fineRow + i) * FIELDS)
      if (cover <= 0) continue
      // A round plume is deepest through its middle; a cell on the boundary hides only as much as its part above it does.
      const tau = rises ? jet.depth * (0.4 + 0.6 * cover) : depthInPart(jet.depth, above)
      const o = (j * grid.fineRow + i) * FIELDS
      const own = cover * ownShare(tau, f[o + TAU]!)
      f[o + TAU]! += own * (tau - f[o + TAU]!)
      f[o + GRAIN_X]! += own * (tau * gx - f[o + GRAIN_X]!)
      f[o + GRAIN_Y]! += own * (tau * gy - f[o + GRAIN_Y]!)
      if (flame > 0) {
        const lit = burning(flame, (y - area.y0) / band + LICKS * tongue * noise.at(gx + 5.1, ripple)) * (0.8 + tongue * noise.at(gx, gy))
        f[o + FIRE]! += cover * (Math.max(0, lit * strength) - f[o + FIRE]!)
      }
      smoke.busy[((j + 1) >> 1) * grid.row + ((i + 1) >> 1)] = 1
    }
  }
}

// Smoke so many times as deep as what leaves here has come from elsewhere and passes
// before the opening: it goes on, and is not taken for this outflow. Less than that
// is this outflow as it was before it thinned. Chosen by us.
const PASSES_BY = 1.5

/** How fast a cell takes on an outflow of depth tau, where smoke of some depth is: 1, or next to nothing where a denser stream passes. */
function ownShare(tau: number, there: number): number {
  if (there <= PASSES_BY * tau) return 1
  const share = (PASSES_BY * tau) / there
  return share * share
}

/** Ripples of the boundary for each lump that leaves. Chosen by us, by eye. */
const RIPPLES = 0.7

/** How far the boundary ripples up and down. */
function waveOf(jet: Jet, grid: Grid): number {
  const { area, plane, churn, look } = jet
  const band = Math.max(0, Math.min(plane, area.y1) - area.y0)
  return sharp((RIPPLES * look.outVelocityMS) / highOf(jet, grid)) * Math.min(0.15 * band, Math.max(0.03, 0.12 * churn) * (area.y1 - area.y0))
}

/** A flame in an opening narrower than this many fine cells has no tongues: they would only flicker. Chosen by us. */
const NARROW_CELLS = 6

/** Below the plane air goes in: what smoke hangs before the opening there goes with it. */
const DRAWN_IN = 1 - Math.min(1, 12 * STEP_S)

function drawIn(f: Float32Array, o: number): void {
  f[o + TAU]! *= DRAWN_IN
  f[o + GRAIN_X]! *= DRAWN_IN
  f[o + GRAIN_Y]! *= DRAWN_IN
}

// Lumps narrower or lower than so many fine cells cannot be told apart from cell
// to cell, and so not be seen to move (paint.ts, unwound). Chosen by us.
const NARROWEST = 5
const LOWEST = 4

/** Size of the lumps in the smoke: some two thirds of the lesser side of the outflow. Chosen by us, by eye. */
function grainOf({ area, plane }: Jet): number {
  const height = Math.max(0.03, area.y1 - area.y0)
  const band = Math.max(0.25 * height, Math.min(height, plane - area.y0))
  return 0.62 * Math.min(area.x1 - area.x0, band)
}

// However long the flame, this share of the outflow's height at most burns where it
// leaves: below it the smoke that it comes with still shows, and its colour can be
// told. Chosen by us, by eye.
const MOST_BURNS = 0.7

// Lumps follow each other closer by this share in thin smoke, or nobody would see it move,
// and where cells are coarse for them, as few show at a time: from and to so much of
// a lump a cell. Chosen by us, by eye.
const CLOSER = 0.25
const COARSE_FROM = 0.1
const COARSE_FULL = 0.16
const coarse = (perCell: number) => Math.max(0, Math.min(1, (perCell - COARSE_FROM) / (COARSE_FULL - COARSE_FROM)))

// No more lumps than this pass one spot in a second: faster smoke is drawn out along its
// way, as with fewer than two pictures to a lump it would be seen to stand, or to go
// back, as the wheels of a coach on film do. Chosen by us, for STEP_S.
const MOST_PER_S = 12

/** From one lump to the next along the way. */
function highOf(jet: Jet, { cellM }: Grid): number {
  const fineM = 0.5 * cellM
  const high = Math.max(grainOf(jet), LOWEST * fineM)
  return Math.max(high / (1 + CLOSER * Math.max(veil(jet.depth), coarse(fineM / high))), jet.look.outVelocityMS / MOST_PER_S)
}

/** Height of the outflow, for what is told as a share of it. */
const bandOf = ({ area, plane }: Jet) => Math.max(0.05, plane - area.y0)

/** Share of the outflow's height that burns. */
const flameReach = (jet: Jet) => Math.min(MOST_BURNS, flameLength(jet.look) / bandOf(jet))

// The flame of an outflow dies out downward over this share of its height, and licks up
// and down by a part of that: it ends on no line. Chosen by us, by eye.
const DIES_OVER = 0.35
const LICKS = 0.25

/** How much burns so far down an outflow of which a share burns. */
function burning(flame: number, down: number): number {
  const s = (flame + 0.5 * DIES_OVER - down) / DIES_OVER
  return s < 0 ? 0 : s > 1 ? 1 : s * s * (3 - 2 * s)
}

/** Glow that burning gas starts with: more for a flame longer than its opening is high, so that it outlives the rise. */
function flameStrength({ look, area, share }: Jet): number {
  if (share < 1) return share // a leak's flame licks along the edge
  return Math.min(4, 0.7 + flameLength(look) / (area.y1 - area.y0))
}

/** Glow at which a flame ends for the eye. Chosen by us, by eye. */
const FLAME_ENDS = 0.12

/** What a flame must lose on each metre for its tip to be its length above the neutral plane; without one, nothing lasts. */
export function burnsOutPerM(jet: Jet): number {
  const length = flameLength(jet.look)
  if (length <= 0) return Infinity
  const above = Math.max(0.25 * length, length - (jet.plane - jet.area.y0))
  return Math.max(0, Math.log(flameStrength(jet) / FLAME_ENDS)) / above
}

// A jet toward the eye widens on the picture at this share of its speed over its
// breadth. Chosen by us, by eye: more would push smoke down past the sill.
const SPREADS = 0.07

function stampAir(grid: Grid, smoke: Smoke, jet: Jet, speed: number): void {
  const { area, plane } = jet
  const heat = heatOf(jet.look, jet.outsideC)
  const { cellM, row, u, v, rough, spread } = grid
  const slant = slantOf(jet.facing)
  const bottom = Math.min(plane, area.y1)
  const ripples = bottom + waveOf(jet, grid)
  const towardEye = jet.facing === 'eye' || jet.facing === 'away'
  const opens = towardEye ? (SPREADS * speed) / Math.max(cellM, area.x1 - area.x0) : 0
  const i0 = Math.max(1, Math.floor(area.x0 / cellM))
  const i1 = Math.min(grid.nx, Math.ceil(area.x1 / cellM) + 1)
  const j0 = Math.max(1, Math.floor(area.y0 / cellM))
  const j1 = Math.min(grid.ny, Math.ceil(ripples / cellM) + 1)
  for (let j = j0; j <= j1; j++) {
    const y = (j - 0.5) * cellM
    const here = upward(jet) ? speed : speed * profile((bottom - y) / Math.max(1e-3, bottom - area.y0))
    for (let i = i0; i <= i1; i++) {
      const x = (i - 0.5) * cellM
      const c = j * row + i
      // Wherever a fine cell holds smoke, its coarse cell must know the colour.
      const near = upward(jet) ? round(area, x, y) : around(x, area.x0, area.x1, cellM) * around(y, area.y0, ripples, cellM)
      if (near > 0) stampKind(smoke, c, near, jet, heat)
      const cover = inside(x, area.x0, area.x1, cellM) * inside(y, area.y0, bottom, cellM)
      if (cover <= 0) continue
      const hold = Math.min(1, 18 * STEP_S) * cover
      u[c]! += hold * (slant.right * here - grid.windU * 0.5 - u[c]!)
      v[c]! += hold * (slant.down * here - v[c]!)
      rough[c]! += cover * (jet.churn - rough[c]!)
      spread[c]! += cover * opens
    }
  }
}

/** Colour, steam and heat of the gas that leaves. */
function stampKind({ kind }: Smoke, c: number, within: number, { depth, look }: Jet, heat: number): void {
  const o = c * KINDS
  const cover = within * ownShare(depth, kind[o + MASS]!)
  const { lightness, tint, steam } = look
  kind[o + MASS]! += cover * (depth - kind[o + MASS]!)
  kind[o + LIGHT]! += cover * (depth * lightness - kind[o + LIGHT]!)
  kind[o + TINT]! += cover * (depth * tint - kind[o + TINT]!)
  kind[o + STEAM]! += cover * (depth * steam - kind[o + STEAM]!)
  kind[o + HEAT]! += cover * (heat - kind[o + HEAT]!)
}

const upward = ({ facing, share }: Jet) => share === 1 && (facing === 'up' || facing === 'over')

/** A plume leaves a level hole round and soft: 1 in the middle of the ellipse, fading to 0 at its rim. */
function round({ x0, x1, y0, y1 }: Rect, x: number, y: number): number {
  const across = (2 * x - x0 - x1) / Math.max(1e-3, x1 - x0)
  const down = (2 * y - y0 - y1) / Math.max(1e-3, y1 - y0)
  const s = 1.5 * (1 - across * across - 0.5 * down * down)
  return s < 0 ? 0 : s > 1 ? 1 : s
}

/** As inside, of a span wider by half a cell on either side. */
const around = (x: number, from: number, to: number, cell: number) => inside(x, from - 0.5 * cell, to + 0.5 * cell, cell)

/** 1 within the span, 0 outside, with an edge one cell wide. */
function inside(x: number, from: number, to: number, cell: number): number {
  const s = Math.min(x - from, to - x) / cell + 0.5
  return s < 0 ? 0 : s > 1 ? 1 : s
}
