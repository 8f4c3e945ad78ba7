import { expect, test } from 'vitest'
import book from '../generated/scales.json'
import { stillOpening } from './frame'
import { swatchLook, type SwatchCue } from './swatch-look'

// The opening of the swatches, and gravity.
const WIDTH = 0.72
const HEIGHT = 0.46
const G = 9.81

/** The measure beneath each scale, as content/scales words it, from what the swatch shows. */
const measures: Record<SwatchCue, (look: ReturnType<typeof stillOpening>) => number> = {
  volume: (look) => {
    const area = WIDTH * HEIGHT * (1 - look.neutralPlane)
    const extinction = look.opticalDepth / Math.sqrt(area)
    return (extinction * look.outVelocityMS * area) / (Math.sqrt(G) * (WIDTH * HEIGHT) ** 0.75)
  },
  velocity: (look) => look.outVelocityMS / Math.sqrt(G * HEIGHT),
  density: (look) => look.opticalDepth,
  darkness: (look) => 1 - look.lightness,
}

/** The level that the cuts of content/scales give. */
function levelOf(cue: SwatchCue, value: number): number {
  const { base, cuts } = book.scales.find((one) => one.cue === cue)!
  return base + cuts.filter(({ at }) => value >= at).length
}

for (const cue of ['volume', 'velocity', 'density', 'darkness'] as const) {
  const { levels } = book.scales.find((one) => one.cue === cue)!
  test.each(levels.map(({ level }) => level).filter((level) => level > 0))(`the swatch of ${cue} %i is rated so by content/scales`, (level) => {
    expect(levelOf(cue, measures[cue](swatchLook(cue, level, stillOpening())))).toBe(level)
  })
}

test('no smoke is drawn at level 0 of what smoke there is, and none moves at level 0 of velocity', () => {
  for (const cue of ['volume', 'density', 'darkness'] as const) expect(swatchLook(cue, 0, stillOpening()).opticalDepth).toBe(0)
  expect(levelOf('velocity', measures.velocity(swatchLook('velocity', 0, stillOpening())))).toBe(0)
})
