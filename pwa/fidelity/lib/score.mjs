// How well what was recovered goes with what was there.

/** Pearson's correlation; NaN where one side does not vary. */
export function pearson(xs, ys) {
  const mx = mean(xs)
  const my = mean(ys)
  const sum = (f) => xs.reduce((total, x, k) => total + f(x - mx, ys[k] - my), 0)
  return sum((x, y) => x * y) / Math.sqrt(sum((x) => x * x) * sum((_, y) => y * y))
}

/** Spearman's: Pearson's of the ranks, equal values sharing their mean rank. */
export const spearman = (xs, ys) => pearson(ranks(xs), ranks(ys))

function ranks(values) {
  const order = [...values.keys()].toSorted((a, b) => values[a] - values[b])
  const out = Array.from({ length: values.length }, () => 0)
  for (let from = 0; from < order.length;) {
    let to = from
    while (to + 1 < order.length && values[order[to + 1]] === values[order[from]]) to++
    for (let k = from; k <= to; k++) out[order[k]] = (from + to) / 2
    from = to + 1
  }
  return out
}

const mean = (values) => values.reduce((a, b) => a + b, 0) / values.length

export const CUES = ['opacity', 'speed', 'lightness', 'area']

/** Both correlations of every cue over some scenes. What could not be recovered counts as 0, never as left out. */
export function correlations(scenes) {
  return Object.fromEntries(CUES.map((cue) => {
    const there = scenes.map(({ truth }) => truth[cue])
    const seen = scenes.map((scene) => scene.seen[cue] || 0)
    return [cue, { pearson: pearson(there, seen), spearman: spearman(there, seen) }]
  }))
}

/** The lowest of all correlations; one that does not exist counts as 0. */
export const lowest = (table) => Math.min(...Object.values(table).flatMap(({ pearson: p, spearman: s }) => [p || 0, s || 0]))

/**
 * Sweeps: a base, and scenes that differ from it in one cue. Gives the share of
 * neighbours in the right order, and how far the other three strayed from the base.
 */
export function sweepReport(scenes) {
  const strays = []
  let pairs = 0
  let ordered = 0
  for (const { base, cue, changed } of groups(scenes)) {
    const steps = [base, ...changed].toSorted((a, b) => a.truth[cue] - b.truth[cue])
    for (let k = 1; k < steps.length; k++) {
      pairs++
      if ((steps[k].seen[cue] || 0) > (steps[k - 1].seen[cue] || 0)) ordered++
    }
    for (const one of changed) {
      for (const other of CUES.filter((name) => name !== cue)) {
        const off = Math.abs((one.seen[other] || 0) / base.seen[other] - 1)
        strays.push({ cue, other, depth: Math.min(one.depth, base.depth), off: Number.isFinite(off) ? off : 1 })
      }
    }
  }
  const within = strays.filter(({ off }) => off <= 0.05).length
  const worst = strays.toSorted((a, b) => b.off - a.off)[0]
  return { ordered: ordered / pairs, pairs, within: within / strays.length, compared: strays.length, worst, strays }
}

/** Every base with the scenes of each cue that was changed. */
function groups(scenes) {
  return scenes.filter(({ cue }) => !cue).flatMap((base) => CUES
    .map((cue) => ({ base, cue, changed: scenes.filter((scene) => scene.base === base.base && scene.cue === cue) }))
    .filter(({ changed }) => changed.length > 0))
}
