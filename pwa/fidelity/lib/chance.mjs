// Seeded chance, so that a run can be repeated by its seed.

/** A list in an order of chance. */
export function shuffled(list, next) {
  const out = [...list]
  for (let k = out.length - 1; k > 0; k--) {
    const other = Math.floor(next() * (k + 1))
    ;[out[k], out[other]] = [out[other], out[k]]
  }
  return out
}

/** Numbers from 0 to 1: mulberry32 (Tommy Ettinger 2017, public domain; from memory, to be confirmed). */
export function chance(seed) {
  let state = seed >>> 0
  return () => {
    state = (state + 0x6d2b79f5) >>> 0
    let t = state
    t = Math.imul(t ^ (t >>> 15), t | 1)
    t ^= t + Math.imul(t ^ (t >>> 7), t | 61)
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296
  }
}
