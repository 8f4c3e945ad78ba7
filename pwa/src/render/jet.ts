import type { OpeningLook } from './frame'

// What leaves an opening, as the fluid needs it: where on the picture, how
// fast, how hot, how thick and of what colour. Picture metres: x to the right,
// y downward, from the top left corner of the picture.

/** The way an opening faces as seen by the eye; 'over' is upward from the slope of a roof that is not in view. */
export type Facing = 'eye' | 'left' | 'right' | 'away' | 'up' | 'over'

/** Whether the building stands before it. */
export const hidden = (facing: Facing): boolean => facing === 'away' || facing === 'over'

export interface Rect { x0: number; y0: number; x1: number; y1: number }

export interface Jet {
  area: Rect
  facing: Facing
  /** Height of the boundary between outflow and inflow, in picture metres; at or below y1 where all flows out. */
  plane: number
  look: OpeningLook
  /** How much it churns, 0 to 1. */
  churn: number
  /** Optical depth as drawn: that of the look, or less where a leak is drawn along the edge of a shut panel. */
  depth: number
  /** How much of the area drawn really is open: 1, or a leak's share of its band. */
  share: number
  /** Temperature outside, C. */
  outsideC: number
  seed: number
}

/** Where air goes in: the part of an opening below its neutral plane, and how far its pull reaches. */
export interface Inlet { index: number; area: Rect; reach: number; speedMS: number }

/** Share of the outflow's speed that shows in the plane of the picture, right and down. */
export interface Slant { right: number; down: number }

// A jet toward the eye is drawn leaving to the lower left, as the wall recedes
// to the upper right (view.ts): the share of its speed that shows is chosen by
// us, so that fast smoke is seen to travel and not only to grow.
const SLANTS: Record<Facing, Slant> = {
  eye: { right: -0.24, down: -0.52 },
  away: { right: 0.25, down: -0.3 },
  left: { right: -0.95, down: -0.05 },
  right: { right: 0.95, down: -0.05 },
  up: { right: 0, down: -1 },
  over: { right: 0, down: -1 },
}

export const slantOf = (facing: Facing): Slant => SLANTS[facing]

const KELVIN = 273.15

/** Buoyancy as a share of gravity in the outflow's own gas, 0 where it is not warmer. */
export function heatOf(look: OpeningLook, outsideC: number): number {
  const gas = look.outTempC + KELVIN
  return Number.isFinite(gas) ? Math.max(0, Math.min(0.8, (gas - outsideC - KELVIN) / gas)) : 0
}

// The engine's measure of churning is the Froude number at the top of the
// outflow; content/scales calls it churning from 0.88 (what buoyancy alone gives
// at 250 C). The picture turns from smooth to rolling around there, not at once.
const SMOOTH_BELOW = 0.6
const ROLLS_ABOVE = 1.15

/** How much the outflow churns, 0 to 1. */
export function churnOf(look: OpeningLook): number {
  return Math.max(0, Math.min(1, (look.churning - SMOOTH_BELOW) / (ROLLS_ABOVE - SMOOTH_BELOW)))
}

/** Length of a flame, m: 0.2 Q^0.4 (CIBSE Guide E, as the flame cuts of content/scales have it). */
export const flameLength = ({ flameKW }: { flameKW: number }): number => (flameKW > 0 ? 0.2 * Math.pow(flameKW, 0.4) : 0)

/**
 * Share of a band as long as the shut panel's edge that a leak really is: what
 * crosses the picture is K V, so a leak of area A counts as a stream sqrt(A)
 * wide. A comes from the mass flow, with the density of air at the gas's
 * temperature (353/T kg/m3, ideal gas at 101 kPa).
 */
export function leakShare(look: OpeningLook, lengthM: number): number {
  const density = 353 / (look.outTempC + KELVIN)
  const area = look.outKgS / Math.max(1e-6, density * look.outVelocityMS)
  return Math.min(1, Math.sqrt(Math.max(0, area)) / lengthM)
}
