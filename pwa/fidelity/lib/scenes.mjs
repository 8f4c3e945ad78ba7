// The scenes that the picture is judged on.
//   family  states as fires of the families make them
//   even    the same openings, every cue drawn evenly and by itself over its
//           whole range, so that no cue can pass for another that goes with it
//   sweep   one cue changed, all else and the seed kept
import { chance, shuffled } from './chance.mjs'
import { drawStates, froude, outlet } from './states.mjs'

/** Ranges of optical depth and of the Froude number of the outflow: what families make, from their 5th percentile up (chosen by us after drawing 155 states). */
export const DEPTHS = [0.15, 10]
export const FROUDES = [0.05, 0.9]
const LIGHTNESSES = [0.1, 0.95]

const WARM_S = 2.5
const FRAMES = 48

/** What an instrument should find: the state, at the grain of a picture. */
const truthOf = (look, heightM) => ({
  opacity: Math.round(255 * (1 - Math.exp(-look.opticalDepth))) / 255, // a PNG knows 256 steps
  speed: froude(look.outVelocityMS, heightM),
  lightness: look.lightness,
  area: outlet(look),
})

export const rootOf = (heightM) => Math.sqrt(9.81 * heightM)

function scene(state, look, rest) {
  const { scenario, side, opening, heightM } = state
  return {
    ...rest, heightM, depth: look.opticalDepth, truth: truthOf(look, heightM),
    take: { scenario, side, opening, look, seed: rest.seed, warmS: WARM_S, frames: FRAMES, every: 1 },
  }
}

/** Scenes on seeds that follow from one seed: `family` and `even` of each kind, and sweeps on `bases` openings. */
export async function makeScenes(studio, { family, even, bases, seed }) {
  const next = chance(seed)
  const states = shuffled(await drawStates(studio, { enough: Math.max(family, even, 7 * bases), seed: Math.floor(next() * 2 ** 31) }), next)
  const newSeed = () => 1 + Math.floor(next() * (2 ** 31 - 2))
  const list = states.slice(0, family).map((state) => scene(state, state.look, { set: 'family', seed: newSeed() }))
  for (let k = 0; k < even; k++) {
    const state = states[k % states.length]
    list.push(scene(state, evenLook(state, next), { set: 'even', seed: newSeed() }))
  }
  for (let k = 0; k < bases; k++) list.push(...sweeps(states[(7 * k) % states.length], k, newSeed()))
  return list
}

function evenLook({ look, heightM, reach }, next) {
  const ratio = ([low, high]) => low * (high / low) ** next()
  const plain = ([low, high]) => low + (high - low) * next()
  const speed = ratio(FROUDES) * rootOf(heightM)
  const share = plain([reach, 1])
  return {
    ...look, open: 1, flow: 3, flameKW: 0, steam: 0, opticalDepth: ratio(DEPTHS), lightness: plain(LIGHTNESSES), outVelocityMS: speed,
    neutralPlane: 1 - share, churning: churningOf(speed, heightM, share),
  }
}

/** Froude number at the top of the outflow, as the engine has it: the profile's top is half as fast again as its mean. */
const churningOf = (speedMS, heightM, share) => (1.5 * froude(speedMS, heightM)) / Math.sqrt(share)

const BASE = { opticalDepth: 1.2, froude: 0.3, lightness: 0.45, share: 0.6 }
// Other values of each cue than the base has.
const CHANGED = { opacity: [0.7, 2, 5], speed: [0.1, 0.2, 0.6], lightness: [0.2, 0.65, 0.9], area: [0.35, 0.8, 1] }

function sweeps(state, k, seed) {
  const root = rootOf(state.heightM)
  const base = {
    ...state.look, open: 1, flow: 3, flameKW: 0, steam: 0, tint: 0, outTempC: 180, churning: 0.7,
    opticalDepth: BASE.opticalDepth, outVelocityMS: BASE.froude * root, lightness: BASE.lightness, neutralPlane: 1 - BASE.share,
  }
  const set = {
    opacity: (value) => ({ ...base, opticalDepth: value }),
    speed: (value) => ({ ...base, outVelocityMS: value * root }),
    lightness: (value) => ({ ...base, lightness: value }),
    area: (value) => ({ ...base, neutralPlane: 1 - Math.max(value, state.reach) }),
  }
  const changed = Object.entries(CHANGED).flatMap(([cue, values]) =>
    values.map((value) => scene(state, set[cue](value), { set: 'sweep', base: k, cue, seed })))
  return [scene(state, base, { set: 'sweep', base: k, seed }), ...changed]
}
