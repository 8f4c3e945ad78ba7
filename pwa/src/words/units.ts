import { signal } from '@preact/signals'
import { decimal, rounded } from './number'
import { degreesIn, degreesMark, degreesSaid, temperatureIn } from './temperature'
import { windSpeedIn } from './wind-speed'

// Metric or US units, as a person chose or as the device's region has them. The
// engine counts in SI; only what is read by a person is turned here. Heat release
// stays in kW and heat flux in kW/m²: fire engineers write both so in the United
// States too (common practice, no source).

export const systems = ['metric', 'us'] as const
export type Units = (typeof systems)[number]

const key = 'lintel.units'

export const units = signal<Units>(chosen() ?? (/-US$/i.test(globalThis.navigator?.language ?? '') ? 'us' : 'metric'))

export function chooseUnits(next: Units): void {
  units.value = next
  try {
    localStorage.setItem(key, next)
  } catch {
    // A browser that keeps nothing has them until the page closes.
  }
}

function chosen(): Units | undefined {
  try {
    const kept = localStorage.getItem(key)
    return systems.find((one) => one === kept)
  } catch {
    return undefined
  }
}

// Looked at, not subscribed to: a component that subscribes is drawn anew only
// when its props are other objects, and the figures of a fire change in place.
// Units are chosen in the Log, where no figure of a fire stands.
const us = () => units.peek() === 'us'

// Exact by definition: the foot, the avoirdupois pound, the US gallon.
const FOOT_M = 0.3048
const POUND_KG = 0.45359237
const GALLON_L = 3.785411784

export const degreesUnit = (): string => degreesMark(us())
/** A temperature in the units of the page: as it is, as it is said, and with its unit. */
export const degrees = (c: number): number => degreesIn(c, us())
export const wholeDegrees = (c: number): number => degreesSaid(c, us())
export const temperature = (c: number): string => temperatureIn(c, us())

/** Of smoke at an opening. */
export const gasSpeed = (ms: number): string => (us() ? `${decimal(ms / FOOT_M, 1)} ft/s` : `${decimal(ms, 2)} m/s`)
export const windSpeed = (ms: number): string => windSpeedIn(ms, us())

export function mass(kg: number): string {
  if (!us()) return kg < 1 ? `${Math.round(kg * 1000)} g` : `${rounded(kg, 1)} kg`
  const lb = kg / POUND_KG
  return lb < 1 ? `${rounded(16 * lb, 1)} oz` : `${rounded(lb, lb < 10 ? 1 : 0)} lb`
}

export function volume(litres: number): string {
  if (!us()) return litres < 1 ? `${Math.round(litres * 1000)} ml` : `${rounded(litres, 1)} l`
  const gallons = litres / GALLON_L
  return gallons < 0.25 ? `${rounded(128 * gallons, 1)} fl oz` : `${rounded(gallons, gallons < 10 ? 1 : 0)} gal`
}
