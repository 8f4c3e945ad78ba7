import { rounded } from './number'

const MILE_M = 1609.344 // exact by definition

/** A wind's speed in metric or US units, also on the thread that draws, which knows no choice of units but is told it. */
export const windSpeedIn = (ms: number, us: boolean): string =>
  us ? `${Math.round((ms * 3600) / MILE_M)} mph` : `${rounded(ms, 1)} m/s`
