// The trade's words for what the engine names, as a person reads them.
import type { Cue, Flow, Hazard, OpeningState, Regime, Role, SeenKind, Side, Stage } from '../../wire.gen'

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
  out: 'Out, all of it',
  both: 'Out above, in below',
  in: 'In, all of it',
  none: 'Nothing moves',
}

const roles: Record<Role, string> = {
  in: 'Inlet',
  out: 'Outlet',
  both: 'Both ways',
  none: 'No flow',
  unknown: 'Not known',
}

const sides: Record<Side, string> = { A: 'Alpha', B: 'Bravo', C: 'Charlie', D: 'Delta' }

const states: Record<OpeningState, string> = {
  open: 'Open',
  part: 'Part open',
  closed: 'Shut',
  broken: 'Broken out',
  unknown: 'Cannot tell',
}

const kinds: Record<SeenKind, string> = {
  door: 'Door',
  window: 'Window',
  vent: 'Vent',
  roof: 'Roof opening',
  hatch: 'Hatch',
  crack: 'Crack or gap',
  other: 'Other opening',
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

const flames = { none: 'No flame', tongues: 'Tongues of flame', full: 'Flame fills it' } as const
const glass = { clear: 'Clear', stained: 'Stained or dark', crazed: 'Crazed or cracked' } as const
const changes = { less: 'Less', same: 'Much the same', more: 'More' } as const
const planeChanges = { less: 'Lower', same: 'Much the same', more: 'Higher' } as const

// A plane this near to the sill or the lintel is none that anyone can see: a
// tenth of the opening is what an eye can judge, this is half of it. Chosen by us.
const edge = 0.05

/** Where gas passes one way only, an opening has no neutral plane; else undefined. */
function planeNone(share: number): string | undefined {
  if (share < edge) return 'None in the opening: all of it goes out'
  return share > 1 - edge ? 'None in the opening: air goes in over all of it' : undefined
}

function planeAt(share: number): string {
  return planeNone(share) ?? `${Math.round(share * 100)}\u00a0% of the way up`
}

export const trade = {
  stages,
  regimes,
  hazards,
  flows,
  roles,
  sides,
  states,
  kinds,
  cues,
  flames,
  glass,
  changes,
  planeChanges,
  roof: 'Roof',
  stage: 'Stage',
  regime: 'Regime',
  outside: 'outside',
  cannotTell: 'Cannot tell',
  yes: 'Yes',
  no: 'No',
  planeAt,
  planeNone,
} as const
