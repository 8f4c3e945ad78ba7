import type { Light } from '../tone'

// Three lights: a bright overcast day, dusk, and night with the working lights
// of the crew on the wall. Sky and walls are mid-tones in all of them, so that
// white smoke and black smoke each stand out from what is behind them, and walls
// have hardly a hue, so that they lend none to the smoke. Chosen by us.

/** The light of a scene. */
export type Daylight = 'day' | 'dusk' | 'night'

export const DAYLIGHTS: readonly Daylight[] = ['day', 'dusk', 'night']

export interface Palette {
  /** Its place among the lights. */
  daylight: number
  skyTop: string
  skyLow: string
  /** Trees far away, and nearer. */
  woods: string
  woodsNear: string
  ground: string
  groundFar: string
  road: string
  /** Front, side and top of a wooden box, and of a house. */
  box: Faces
  house: Faces
  roof: Faces
  /** Boards round doors, windows and along eaves; and the foot of a wall. */
  trim: string
  foot: string
  line: string
  /** A line so faint that it is only a surface: siding, grain. */
  grain: string
  /** The shade under an eave, and on the ground. */
  shade: string
  inside: string
  insideDeep: string
  leaf: string
  glass: string
  /** The sky in a window pane, above and below. */
  shine: readonly [string, string]
  mote: string
  mark: string
  /** Cutaway: cut through a wall, warm and hot gas, cold air, writing. */
  cut: string
  warm: Colour
  hot: Colour
  air: string
  ink: string
  paper: string
  smoke: Light
  /** What lies between the eye and something far away, and how much of it. */
  haze: string
}

type Colour = readonly [number, number, number]

export interface Faces { front: string; side: string; top: string }

export const DAY: Palette = {
  daylight: 0,
  skyTop: '#9babb4', skyLow: '#cdd0c8', woods: '#aab1ab', woodsNear: '#939c92',
  ground: '#a49c88', groundFar: '#b6af9d', road: '#8d8a83',
  box: { front: '#c0a57c', side: '#9c8460', top: '#d0b993' },
  house: { front: '#b9b7ac', side: '#97968c', top: '#c9c7bd' },
  roof: { front: '#6e6b68', side: '#595653', top: '#7e7a75' },
  trim: '#dedbd0', foot: '#86837a',
  line: '#3b352d', grain: 'rgba(52,44,32,0.15)', shade: 'rgba(28,24,18,0.34)', inside: '#5b5046', insideDeep: '#231e1a',
  leaf: '#8a724b', glass: '#4f5a5f', shine: ['rgba(196,210,216,0.5)', 'rgba(150,166,170,0.1)'],
  mote: 'rgba(255,252,244,0.85)', mark: '#b3401e',
  cut: '#3b352d', warm: [222, 186, 134], hot: [190, 62, 26], air: '#ece7dc', ink: '#23201c', paper: '#f6f2e9',
  smoke: { dark: 0.035, pale: 0.97, cast: [1, 0.996, 0.985], relief: 0.24 }, haze: '#c3c9c6',
}

const DUSK: Palette = {
  daylight: 1,
  skyTop: '#3f4a56', skyLow: '#8a8077', woods: '#55595a', woodsNear: '#43484a',
  ground: '#3f3d38', groundFar: '#504d47', road: '#35373a',
  box: { front: '#8f7850', side: '#695839', top: '#a0885f' },
  house: { front: '#85837b', side: '#64635d', top: '#94928a' },
  roof: { front: '#474749', side: '#373739', top: '#535356' },
  trim: '#aaa79d', foot: '#55534d',
  line: '#1b1916', grain: 'rgba(0,0,0,0.19)', shade: 'rgba(6,7,9,0.4)', inside: '#3a332c', insideDeep: '#14110f',
  leaf: '#66543a', glass: '#333d45', shine: ['rgba(150,140,130,0.42)', 'rgba(90,92,96,0.1)'],
  mote: 'rgba(240,240,236,0.75)', mark: '#ff9a5c',
  cut: '#d9d2c4', warm: [132, 100, 62], hot: [200, 76, 34], air: '#2a3034', ink: '#f4efe5', paper: '#1b1d1f',
  smoke: { dark: 0.025, pale: 0.88, cast: [1, 0.99, 0.98], relief: 0.24 }, haze: '#6d6c6b',
}

const NIGHT: Palette = {
  ...DUSK,
  daylight: 2,
  skyTop: '#343c47', skyLow: '#5d6268', woods: '#3a4047', woodsNear: '#2a3036',
  ground: '#2c2b29', groundFar: '#35342f', road: '#232528',
  box: { front: '#877047', side: '#43382a', top: '#6d5c40' },
  house: { front: '#7f7c72', side: '#3f403f', top: '#6d6b64' },
  roof: { front: '#343538', side: '#232427', top: '#3a3b3e' },
  trim: '#a5a195', foot: '#4c4a44',
  line: '#0f0e0d', shade: 'rgba(0,0,0,0.5)', inside: '#2b2622', insideDeep: '#0c0b0a',
  leaf: '#5c4b33', glass: '#1f262c', shine: ['rgba(120,124,128,0.3)', 'rgba(60,64,70,0.05)'],
  smoke: { dark: 0.015, pale: 0.82, cast: [1, 0.99, 0.96], relief: 0.26 }, haze: '#33383e',
}

const LIGHTS: Record<Daylight, Palette> = { day: DAY, dusk: DUSK, night: NIGHT }

/** The light that a theme of the page goes with. */
export const daylightOf = (theme: string | undefined): Daylight => (theme === 'dark' ? 'dusk' : 'day')

/** The palette of a light, or of that which a theme of the page goes with. */
export const paletteOf = (theme: string | undefined, light?: Daylight): Palette => LIGHTS[light ?? daylightOf(theme)]
