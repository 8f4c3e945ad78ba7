import type { Light } from '../tone'

// Two lights: a bright overcast day, and dusk for the dark theme. Sky and walls
// are mid-tones in both, so that white smoke and black smoke each stand out
// from what is behind them. All colours are chosen by us.

export interface Palette {
  skyTop: string
  skyLow: string
  ground: string
  groundFar: string
  /** Front, side and top of a wooden box, and of a house. */
  box: Faces
  house: Faces
  roof: Faces
  line: string
  /** A line so faint that it is only a surface: siding, grain. */
  grain: string
  inside: string
  insideDeep: string
  leaf: string
  glass: string
  mote: string
  mark: string
  /** Cutaway: cut through a wall, warm and hot gas, cold air, writing. */
  cut: string
  warm: readonly [number, number, number]
  hot: readonly [number, number, number]
  air: string
  ink: string
  paper: string
  smoke: Light
}

export interface Faces { front: string; side: string; top: string }

export const DAY: Palette = {
  skyTop: '#a9b8c0', skyLow: '#d0d3cb', ground: '#a89f8c', groundFar: '#bdb5a3',
  box: { front: '#c0a57c', side: '#9c8460', top: '#d0b993' },
  house: { front: '#b9b7ac', side: '#96958c', top: '#c9c7bd' },
  roof: { front: '#75706b', side: '#5d5955', top: '#847f79' },
  line: '#3b352d', grain: 'rgba(59,48,33,0.16)', inside: '#5b5046', insideDeep: '#231e1a', leaf: '#8f7850', glass: '#5d6a70',
  mote: 'rgba(255,252,244,0.85)', mark: '#b3401e',
  cut: '#3b352d', warm: [214, 178, 128], hot: [196, 66, 26], air: '#e9e4d8', ink: '#23201c', paper: '#f6f2e9',
  smoke: { dark: [23, 21, 20], pale: [247, 246, 243], relief: 0.34 },
}

export const DUSK: Palette = {
  skyTop: '#2f363d', skyLow: '#4a4f52', ground: '#2d2c2a', groundFar: '#3a3935',
  box: { front: '#6b5b45', side: '#4f4333', top: '#786850' },
  house: { front: '#5f6263', side: '#484a4b', top: '#6b6e6f' },
  roof: { front: '#3a3a3c', side: '#2c2c2e', top: '#444446' },
  line: '#12110f', grain: 'rgba(0,0,0,0.2)', inside: '#2e2823', insideDeep: '#110f0d', leaf: '#52452f', glass: '#39444a',
  mote: 'rgba(232,234,236,0.7)', mark: '#f08a4b',
  cut: '#c9c2b4', warm: [122, 92, 60], hot: [190, 70, 32], air: '#262b2f', ink: '#f0ebe1', paper: '#1d1f20',
  smoke: { dark: [8, 8, 8], pale: [196, 198, 200], relief: 0.32 },
}

/** The palette of a theme of the page. */
export const paletteOf = (theme: string | undefined): Palette => (theme === 'dark' ? DUSK : DAY)
