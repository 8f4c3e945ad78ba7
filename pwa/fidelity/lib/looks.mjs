// Pairs that an officer tells apart at a glance, at a port of the box and at the
// door of a house: one state and the one it must not be taken for.

const plain = { open: 1, flow: 3, neutralPlane: 0.35, inVelocityMS: 0.4, opticalDepth: 3, lightness: 0.3, tint: 0.02, churning: 0.7, outTempC: 180 }

/** Looks of one opening, its speed as a Froude number. Chosen by us to lie in the middle of levels of content/scales. */
export const LOOKS = [
  ['slow, dark', { froude: 0.06, opticalDepth: 4, lightness: 0.15, churning: 0.3, outTempC: 90 }],
  ['fast, dark', { froude: 0.6, opticalDepth: 4, lightness: 0.15, churning: 1.3, outTempC: 420 }],
  ['laminar', { froude: 0.15, opticalDepth: 2, lightness: 0.45, churning: 0.3, outTempC: 120 }],
  ['churning', { froude: 0.5, opticalDepth: 2, lightness: 0.45, churning: 1.4, outTempC: 320 }],
  ['thin', { froude: 0.25, opticalDepth: 0.3, lightness: 0.5 }],
  ['dense', { froude: 0.25, opticalDepth: 7, lightness: 0.5 }],
  ['pale', { froude: 0.12, opticalDepth: 2, lightness: 0.85, churning: 0.3, outTempC: 80 }],
  ['black, driven', { froude: 0.8, opticalDepth: 9, lightness: 0.1, churning: 1.6, outTempC: 550, neutralPlane: 0.15 }],
]

/** A whole frame in which one opening shows a look. */
export function frameOf(look, { emptyFrame, scenario, opening }) {
  const frame = emptyFrame(scenario.compartments.length, scenario.openings.length)
  const index = scenario.openings.findIndex(({ id }) => id === opening)
  const { froude, ...rest } = { ...plain, ...look }
  const height = scenario.openings[index].height_m
  Object.assign(frame.openings[index], rest, { outVelocityMS: froude * Math.sqrt(9.81 * height) })
  return frame
}
