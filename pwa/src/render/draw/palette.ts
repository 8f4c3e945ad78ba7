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
  skyTop: '#414c56', skyLow: '#7b7d79', ground: '#3d3b37', groundFar: '#4d4b46',
  box: { front: '#8f7850', side: '#695839', top: '#a0885f' },
  house: { front: '#87857c', side: '#67665f', top: '#94928a' },
  roof: { front: '#4a4949', side: '#383738', top: '#565555' },
  line: '#1b1916', grain: 'rgba(0,0,0,0.2)', inside: '#3a332c', insideDeep: '#14110f', leaf: '#6b5837', glass: '#44515a',
  mote: 'rgba(240,240,236,0.75)', mark: '#ff9a5c',
  cut: '#d9d2c4', warm: [128, 96, 60], hot: [196, 74, 32], air: '#2a3034', ink: '#f4efe5', paper: '#1b1d1f',
  smoke: { dark: [10, 10, 10], pale: [222, 223, 222], relief: 0.33 },
}

/** The palette of a theme of the page. */
export const paletteOf = (theme: string | undefined): Palette => (theme === 'dark' ? DUSK : DAY)
