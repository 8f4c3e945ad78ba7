// What the picture says of itself, for those who hear it instead of seeing it,
// and beside the cutaway. It states what shows and never how to rate it.

const tenths = (n: number) => (n >= 10 ? 'all' : n <= 0 ? 'less than a tenth' : n === 1 ? 'a tenth' : `${n} tenths`)

/** A short time as one says it: in tenths below a second. */
function time(s: number): string {
  if (s < 0.95) return `${tenths(Math.max(1, Math.round(10 * s)))} of a second`
  const whole = Math.round(s)
  return whole === 1 ? 'a second' : `${whole} seconds`
}

export const picture = {
  side: (name: string) => `${name} side.`,
  wind: { left: 'The wind blows from the left.', right: 'The wind blows from the right.', front: 'The wind blows onto this side.', behind: 'The wind blows from behind.' },
  windSpeed: (ms: number) => `${Number(ms.toFixed(1))} m/s`,
  opening: (name: string, open: number) =>
    open < 0.02 ? `${name}, shut` : open > 0.98 ? `${name}, open` : `${name}, ${tenths(Math.round(open * 10))} open`,
  nothing: 'nothing comes out',
  fills: (n: number) => `smoke comes out over ${n >= 10 ? 'all of the opening' : `the upper ${tenths(n)} of the opening`}`,
  rises: 'smoke rises out of all of it',
  crack: 'smoke comes out along its edge',
  hides: (n: number) => `it hides ${tenths(n)} of what lies behind`,
  folded: 'its face shows folds',
  grey: (looks: string) => `its shade: ${looks.replace(/\.$/, '').toLowerCase()}`,
  brown: 'brownish',
  speed: (s: number) => `it moves the height of the opening in ${time(s)}`,
  still: 'it hardly moves',
  smooth: 'its edges are smooth',
  rolling: 'its edges roll over',
  breathing: 'it swells and shrinks slowly',
  vanishing: 'it thins away soon after leaving',
  flame: 'flame shows in it',
  drawnIn: 'air is drawn in below',
  drawnInAll: 'air is drawn in over all of it',
  drawnInGaps: 'air is drawn in at its gaps',
  drawnDown: 'air is drawn down into it',
  behind: 'Smoke rises from a side that is not in view.',
  open: (percent: number) => `${percent} percent open`,
  nearer: 'Nearer',
  farther: 'Whole building',
  scene: (side: string) => `The building seen from the ${side} side`,
} as const
