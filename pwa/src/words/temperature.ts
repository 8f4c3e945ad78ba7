// Temperatures as people say them, also on the thread that draws, which knows no
// choice of units but is told it.

/** From here up a temperature is said to the nearest ten: no one who stands before a fire, and no model of one, knows it closer. Chosen by us. */
const IN_TENS = { metric: 100, us: 200 }

export const degreesIn = (c: number, us: boolean): number => (us ? 1.8 * c + 32 : c)

/** The number that is said: of what two numbers said differ by, the difference is taken between these. */
export function degreesSaid(c: number, us: boolean): number {
  const exact = degreesIn(c, us)
  return exact >= IN_TENS[us ? 'us' : 'metric'] ? 10 * Math.round(exact / 10) : Math.round(exact)
}

export const degreesMark = (us: boolean): string => (us ? '°F' : '°C')

export const temperatureIn = (c: number, us: boolean): string => `${degreesSaid(c, us)} ${degreesMark(us)}`
