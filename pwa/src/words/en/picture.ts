// What the picture says of itself, for those who hear it instead of seeing it,
// and beside the cutaway. It states what shows and never how to rate it.

const tenths = (n: number) => (n >= 10 ? 'all' : n <= 0 ? 'less than a tenth' : n === 1 ? 'a tenth' : `${n} tenths`)

export const picture = {
  side: (name: string) => `${name} side.`,
  wind: { left: 'The wind blows from the left.', right: 'The wind blows from the right.', front: 'The wind blows onto this side.', behind: 'The wind blows from behind.' },
  windSpeed: (ms: number) => `${Number(ms.toFixed(1))} m/s`,
  opening: (name: string, open: number) =>
    open < 0.02 ? `${name}, shut` : open > 0.98 ? `${name}, open` : `${name}, ${tenths(Math.round(open * 10))} open`,
  nothing: 'nothing comes out',
  fills: (n: number) => `smoke comes out over ${n >= 10 ? 'all of the opening' : `the upper ${tenths(n)} of the opening`}`,
  crack: 'smoke comes out along its edge',
  hides: (n: number) => `it hides ${tenths(n)} of what lies behind`,
  folded: 'its face shows folds',
  grey: (n: number) => `on a scale from black at 0 to white at 10 it is a ${n}`,
  brown: 'brownish',
  speed: (s: string) => `it moves the height of the opening in ${s} seconds`,
  still: 'it hardly moves',
  smooth: 'its edges are smooth',
  rolling: 'its edges roll over',
  breathing: 'it swells and shrinks slowly',
  vanishing: 'it thins away soon after leaving',
  flame: 'flame shows in it',
  drawnIn: 'air is drawn in below',
  drawnInAll: 'air is drawn in over all of it',
  behind: 'Smoke rises from a side that is not in view.',
  open: (percent: number) => `${percent} percent open`,
  scene: (side: string) => `The building seen from the ${side} side`,
} as const
