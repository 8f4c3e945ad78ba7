// What the picture says of itself, for those who hear it instead of seeing it,
// and on its own controls. It states what shows, at the grain of the picture,
// and never how to rate it. Every entry is a whole sentence with named slots.

/** Tenths as one says them. */
function tenths(n: number): string {
  if (n >= 10) return 'all'
  return n <= 0 ? 'less than a tenth' : n === 1 ? 'a tenth' : `${n} tenths`
}

/** A short time as one says it: in tenths below a second. */
function time(s: number): string {
  if (s < 0.15) return 'a tenth of a second or less'
  if (s < 0.95) return `${Math.round(10 * s)} tenths of a second`
  const whole = Math.round(s)
  return whole === 1 ? 'a second' : `${whole} seconds`
}

/** From white at 0 to black at 10. */
function shade(n: number): string {
  if (n <= 0) return 'It is white.'
  return n >= 10 ? 'It is black.' : `Its shade lies ${tenths(n)} of the way from white to black.`
}

export const scene = {
  seen: ({ side }: { side: string }) => `You see the ${side} side.`,
  seenFar: ({ side }: { side: string }) => `You see the ${side} side from across the road, small and in haze.`,
  light: {
    day: 'It is an overcast day.',
    dusk: 'It is dusk.',
    night: 'It is night, and working lights stand on this side.',
  },
  wind: {
    left: 'The wind blows from the left.', right: 'The wind blows from the right.',
    front: 'The wind blows onto this side.', behind: 'The wind blows from behind.',
  },
  bends: { left: 'It bends the smoke to the left.', right: 'It bends the smoke to the right.' },
  behind: 'Smoke rises from a side that is not in view.',

  shut: ({ opening }: { opening: string }) => `${opening} is shut.`,
  open: ({ opening }: { opening: string }) => `${opening} is open.`,
  part: ({ opening, share }: { opening: string; share: number }) => `${opening} is ${tenths(share)} open.`,
  vent: ({ opening }: { opening: string }) => `${opening} is a vent that always stands open.`,

  glassClear: 'Its glass is clear.',
  glassSmoky: ({ share }: { share: number }) => `Smoke stands behind its glass, over ${share >= 10 ? 'all of it' : `the upper ${tenths(share)} of it`}.`,
  glassStained: ({ hidden }: { hidden: number }) => `A brown-black film on its glass hides ${tenths(hidden)} of what lies behind.`,
  glassCrazed: 'Fine cracks run through its glass.',
  glassBroken: 'Its glass has broken out.',

  swatch: 'An opening in a wall of boards stands open.',
  nothing: 'Nothing comes out of it.',
  outOfAll: 'Smoke comes out of all of it.',
  outAbove: ({ share }: { share: number }) => `Smoke comes out over the upper ${tenths(share)} of it.`,
  outAtEdge: 'Smoke comes out along its edge.',
  column: 'Smoke rises out of all of it and stands in a column.',
  hides: ({ share }: { share: number }) => `The smoke hides ${share >= 10 ? 'all' : tenths(share)} of what lies behind it.`,
  folded: 'Its face shows folds.',
  shade: ({ tenths: n }: { tenths: number }) => shade(n),
  brown: 'It is brownish.',
  speed: ({ seconds }: { seconds: number }) => `It moves the height of the opening in ${time(seconds)}.`,
  still: 'It hardly moves.',
  smooth: 'Its edges are smooth.',
  rolling: 'Its edges roll over.',
  breathing: ({ perMinute }: { perMinute: number }) => `It turns between coming out and going in, about ${perMinute} times a minute.`,
  vanishing: 'It thins away soon after leaving.',
  banks: 'It spreads under the eave and rolls up over its edge.',
  flame: ({ heights }: { heights: number }) =>
    heights < 1 ? `Flame shows in it, ${tenths(Math.max(1, Math.round(10 * heights)))} of its height long.` : heights < 1.5 ? 'Flame comes out of it, about as long as it is high.' : 'Flame comes out of it, longer than it is high.',
  fireInside: 'Something burns in sight behind it.',

  drawnIn: 'Air is drawn in below.',
  drawnInAll: 'Air is drawn in over all of it.',
  drawnInGaps: 'Air is drawn in at its gaps.',
  drawnDown: 'Air is drawn down into it.',

  plane: 'neutral plane',
  arrows: 'Each arrow is as long as smoke moves in a quarter of a second.',
  openBy: (percent: number) => `${percent} percent open`,
  view: 'How the building is seen',
  nearer: 'Nearer',
  farther: 'Farther',
  lightNow: { day: 'Light: day', dusk: 'Light: dusk', night: 'Light: night' },
  picture: (side: string) => `The building seen from the ${side} side`,
} as const
