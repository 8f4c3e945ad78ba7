/** What the Prop screen says. */
export const prop = {
  building: 'Building',
  buildings: { box: 'Small box', bungalow: 'One-storey house', two_storey: 'Two-storey house' } as Record<string, string>,
  seenFrom: 'Seen from',
  starting: 'Starting the fire model on this device',
  failed: 'The fire model did not start',
  notLit: 'Nothing burns yet. Lay a fuel and light it.',
  panels: 'What you can change',
  panel: { openings: 'Openings', fuel: 'Fuel', water: 'Water and wind', time: 'Time' },

  // Openings
  open: 'Open',
  shut: 'Shut',
  openness: (percent: number) => (percent === 0 ? 'shut' : percent === 100 ? 'open' : `${percent} % open`),
  howFar: (name: string) => `${name}: how far open`,
  dragHint: 'On the drawing: tap an opening to open or shut it, drag it sideways for part. Draw the wall away to reach what is inside.',
  outside: 'To the outside',
  inside: 'Inside',

  // Fuel
  layFuel: 'Fuel',
  layWhere: 'Laid in',
  amount: (kg: number) => (kg < 1 ? `${Math.round(kg * 1000)} g` : `${kg} kg`),
  light: 'Light it',
  lightMore: 'Add it and light it',
  simulatedOnly: 'Simulated only: never burn plastics in a live prop.',
  simulatedShort: 'Simulated only',

  // Water and wind
  sprayInto: 'Water goes into',
  spray: (litres: number) => (litres < 1 ? `Spray ${Math.round(litres * 1000)} ml` : `Spray ${litres} l`),
  sprayed: (litres: number) => `${litres < 1 ? `${Math.round(litres * 1000)} ml` : `${litres} l`} sprayed so far`,
  wind: 'Wind',
  windSpeeds: { 0: 'Still', 2: '2 m/s', 5: '5 m/s', 9: '9 m/s' } as Record<number, string>,
  windFrom: 'It blows onto',

  // Time
  clock: (s: number) => `${Math.floor(s / 60)}:${String(Math.floor(s % 60)).padStart(2, '0')}`,
  clockLabel: 'Time since the start',
  speed: 'How fast the fire runs',
  speeds: { 1: '1×', 4: '4×', 10: '10×' } as Record<number, string>,
  speedNote: 'Smoke always moves at its true speed; only the fire runs faster.',
  pause: 'Pause',
  goOn: 'Go on',
  back: 'Back 15 s',
  backNote: 'Goes back and lets you choose otherwise from there.',
  again: 'Start over',

  // What is seen, and what the cutaway adds
  drawAway: 'Draw the wall away',
  putBack: 'Put the wall back',
  seen: 'What shows',
  nothingMoves: 'nothing moves',
  flows: ['nothing moves', 'air goes in', 'smoke comes out', 'smoke out above, air in below'],
  clearFlows: ['nothing moves', 'air goes in', 'clear air comes out', 'clear air out above, air in below'],
  behind: 'Behind the wall',
  stage: 'Stage',
  regime: 'Regime',
  heat: 'Heat release',
  heatKW: (kw: number) => (kw >= 1000 ? `${(kw / 1000).toFixed(1)} MW` : `${kw < 10 ? kw.toFixed(1) : Math.round(kw)} kW`),
  events: 'What happened',
  noEvents: 'Nothing sudden so far.',
  eventKinds: {
    flashover: 'Flashover',
    ventilation_induced_flashover: 'Ventilation-induced flashover',
    backdraft: 'Backdraft',
    smoke_explosion: 'Smoke explosion',
    extinction: 'The flame went out',
    reignition: 'It lit again',
  } as Record<string, string>,
  moved: (name: string, to: string) => `${name}: ${to}`,
  legend: 'Paper: cool air. Ochre to ember: warmer gas. Dashes: neutral plane. Arrows: flow, thicker for more.',
} as const
