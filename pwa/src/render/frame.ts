import {
  COMPARTMENT, COMPARTMENT_LENGTH, FRAME_HEADER, FRAME_HEADER_LENGTH, OPENING, OPENING_LENGTH,
} from '../wire.gen'

// One instant of a running fire as the engine hands it over: a typed array in
// the field order of engine.Frame, read here into named values.

export interface HeaderLook { tS: number; hrrKW: number; stage: number; regime: number; windMS: number; events: number }

export interface CompartmentLook {
  upperC: number; lowerC: number; interfaceM: number; o2Upper: number; o2Lower: number; fuelGasUpper: number
  coUpper: number; sootUpper: number; aerosolUpper: number; hrrKW: number; pressurePa: number; floorFluxKW: number
}

export interface OpeningLook {
  open: number; inKgS: number; outKgS: number; neutralM: number; topVelocityMS: number; outVelocityMS: number
  inVelocityMS: number; outTempC: number; extinctionM: number; opticalDepth: number; lightness: number; tint: number
  steam: number; churning: number; pulsing: number; flameKW: number; flow: number; neutralPlane: number
  volume: number; velocity: number; density: number; darkness: number; colour: number
}

export interface FrameLook { header: HeaderLook; compartments: CompartmentLook[]; openings: OpeningLook[] }

// Name here and place in the engine's array, which wire.gen.ts generates.
const HEADER_AT: Record<keyof HeaderLook, number> = {
  tS: FRAME_HEADER.TS, hrrKW: FRAME_HEADER.HRRKW, stage: FRAME_HEADER.Stage, regime: FRAME_HEADER.Regime,
  windMS: FRAME_HEADER.WindMS, events: FRAME_HEADER.Events,
}
const COMPARTMENT_AT: Record<keyof CompartmentLook, number> = {
  upperC: COMPARTMENT.UpperC, lowerC: COMPARTMENT.LowerC, interfaceM: COMPARTMENT.InterfaceM,
  o2Upper: COMPARTMENT.O2Upper, o2Lower: COMPARTMENT.O2Lower, fuelGasUpper: COMPARTMENT.FuelGasUpper,
  coUpper: COMPARTMENT.COUpper, sootUpper: COMPARTMENT.SootUpper, aerosolUpper: COMPARTMENT.AerosolUpper,
  hrrKW: COMPARTMENT.HRRKW, pressurePa: COMPARTMENT.PressurePa, floorFluxKW: COMPARTMENT.FloorFluxKW,
}
const OPENING_AT: Record<keyof OpeningLook, number> = {
  open: OPENING.Open, inKgS: OPENING.InKgS, outKgS: OPENING.OutKgS, neutralM: OPENING.NeutralM,
  topVelocityMS: OPENING.TopVelocityMS, outVelocityMS: OPENING.OutVelocityMS,
  inVelocityMS: OPENING.InVelocityMS, outTempC: OPENING.OutTempC, extinctionM: OPENING.ExtinctionM,
  opticalDepth: OPENING.OpticalDepth, lightness: OPENING.Lightness, tint: OPENING.Tint, steam: OPENING.Steam,
  churning: OPENING.Churning, pulsing: OPENING.Pulsing, flameKW: OPENING.FlameKW, flow: OPENING.Flow,
  neutralPlane: OPENING.NeutralPlane, volume: OPENING.Volume, velocity: OPENING.Velocity,
  density: OPENING.Density, darkness: OPENING.Darkness, colour: OPENING.Colour,
}

/** Whether a compartment has two layers to be told apart; where it has none, its gas is the lower one's. */
export const layered = (look: CompartmentLook): boolean => Number.isFinite(look.interfaceM)

/** Length of a frame in numbers. */
export const frameLength = (compartments: number, openings: number): number =>
  FRAME_HEADER_LENGTH + compartments * COMPARTMENT_LENGTH + openings * OPENING_LENGTH

/** Reads a frame; reuses `into` where one is given, so that a running picture allocates nothing. */
export function readFrame(values: Float64Array, compartments: number, openings: number, into?: FrameLook): FrameLook {
  const frame = into ?? emptyFrame(compartments, openings)
  fill(frame.header, HEADER_AT, values, 0)
  let at = FRAME_HEADER_LENGTH
  for (const one of frame.compartments) {
    fill(one, COMPARTMENT_AT, values, at)
    at += COMPARTMENT_LENGTH
  }
  for (const one of frame.openings) {
    fill(one, OPENING_AT, values, at)
    at += OPENING_LENGTH
  }
  return frame
}

/** Writes a frame into an array of its length, in the engine's order. Returns whether any number in it changed. */
export function writeFrame({ header, compartments, openings }: FrameLook, values: Float64Array): boolean {
  let changed = put(header, HEADER_AT, values, 0)
  let at = FRAME_HEADER_LENGTH
  for (const one of compartments) {
    changed = put(one, COMPARTMENT_AT, values, at) || changed
    at += COMPARTMENT_LENGTH
  }
  for (const one of openings) {
    changed = put(one, OPENING_AT, values, at) || changed
    at += OPENING_LENGTH
  }
  return changed
}

/** A frame of a building in which nothing burns. */
export function emptyFrame(compartments: number, openings: number): FrameLook {
  return {
    header: blank(HEADER_AT),
    compartments: Array.from({ length: compartments }, () => blank(COMPARTMENT_AT)),
    openings: Array.from({ length: openings }, stillOpening),
  }
}

/** An opening through which nothing moves. Written out, so that reading it in a loop stays fast. */
export const stillOpening = (): OpeningLook => ({
  open: 0, inKgS: 0, outKgS: 0, neutralM: 0, topVelocityMS: 0, outVelocityMS: 0, inVelocityMS: 0, outTempC: 0,
  extinctionM: 0, opticalDepth: 0, lightness: 0, tint: 0, steam: 0, churning: 0, pulsing: 0, flameKW: 0, flow: 0,
  neutralPlane: 0, volume: 0, velocity: 0, density: 0, darkness: 0, colour: 0,
})

/** The names of an opening's values. */
export const OPENING_NAMES = Object.keys(OPENING_AT) as (keyof OpeningLook)[]

type Places<K extends string> = Record<K, number>

function blank<K extends string>(places: Places<K>): Record<K, number> {
  return Object.fromEntries(Object.keys(places).map((name) => [name, 0])) as Record<K, number>
}

function fill<K extends string>(into: Record<K, number>, places: Places<K>, values: Float64Array, at: number): void {
  for (const name in places) into[name] = values[at + places[name]]!
}

function put<K extends string>(from: Record<K, number>, places: Places<K>, values: Float64Array, at: number): boolean {
  let changed = false
  for (const name in places) {
    const place = at + places[name]
    if (Object.is(values[place], from[name])) continue
    values[place] = from[name]
    changed = true
  }
  return changed
}
