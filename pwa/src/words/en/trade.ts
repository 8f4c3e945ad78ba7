// The trade's words for what the engine names, as a person reads them.
import type { Colour, Cue, Flow, Hazard, Regime, Side, Stage } from '../../wire.gen'

const stages: Record<Stage, string> = {
  incipient: 'Incipient',
  growth: 'Growth',
  pre_flashover: 'Pre-flashover',
  fully_developed: 'Fully developed',
  ventilation_limited_decay: 'Ventilation-limited decay',
  decay: 'Decay',
  after_knock_down: 'After knock-down',
  undetermined: 'Undetermined',
}

const regimes: Record<Regime, string> = {
  fuel_limited: 'Fuel-limited',
  ventilation_limited: 'Ventilation-limited',
}

const hazards: Record<Hazard, string> = {
  flashover: 'Flashover',
  ventilation_induced_flashover: 'Ventilation-induced flashover',
  backdraft: 'Backdraft',
  smoke_explosion: 'Smoke explosion',
}

const flows: Record<Flow, string> = {
  in: 'In, all of it',
  out: 'Out, all of it',
  both: 'Both ways',
  none: 'No movement',
}

const sides: Record<Side, string> = { A: 'Alpha', B: 'Bravo', C: 'Charlie', D: 'Delta' }

const colours: Record<Colour, string> = {
  white: 'White',
  light_grey: 'Light grey',
  grey: 'Grey',
  brown: 'Brown',
  yellow_grey: 'Yellow-grey',
  dark_grey: 'Dark grey',
  black: 'Black',
}

const cues: Record<Cue, string> = {
  flow: 'Flow',
  volume: 'Volume',
  velocity: 'Velocity',
  density: 'Density',
  darkness: 'Darkness',
  colour: 'Hue',
  churning: 'Smooth or churning',
  pulsing: 'Pulsing',
  vanishes: 'Vanishing',
  flame: 'Flame',
  window: 'Glass',
  neutral_plane: 'Neutral plane',
}

/** Levels 0 to 4 of each ordinal cue, in words beside the moving swatch. */
const levels: Record<'volume' | 'velocity' | 'density' | 'darkness', readonly string[]> = {
  volume: ['None', 'Wisp', 'Part of it', 'Most of it', 'All of it'],
  velocity: ['Hanging', 'Drifting', 'Steady', 'Fast', 'Jetting'],
  density: ['Clear', 'Haze', 'Veil', 'Thick', 'Solid'],
  darkness: ['White', 'Pale', 'Mid', 'Dark', 'Black'],
}

export const trade = { stages, regimes, hazards, flows, sides, colours, cues, levels, cannotTell: 'Cannot tell' } as const
