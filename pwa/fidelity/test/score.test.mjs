import { expect, test } from 'vitest'
import { correlations, lowest, pearson, spearman, sweepReport } from '../lib/score.mjs'

// Anscombe, "Graphs in statistical analysis", The American Statistician 27 (1973),
// 17-21: the first of the quartet has a correlation of 0.816.
test('Pearson on a published set', () => {
  const x = [10, 8, 13, 9, 11, 14, 6, 4, 12, 7, 5]
  const y = [8.04, 6.95, 7.58, 8.81, 8.33, 9.96, 7.24, 4.26, 10.84, 4.82, 5.68]
  expect(pearson(x, y)).toBeCloseTo(0.816, 3)
})

// 1 - 6 sum(d²)/(n(n² - 1)) by hand: d = 0, 1, -1, 0, 0, so 1 - 12/120.
test('Spearman by hand, and with equal values', () => {
  expect(spearman([1, 2, 3, 4, 5], [10, 30, 20, 44, 90])).toBeCloseTo(0.9, 12)
  expect(spearman([1, 2, 2, 3], [5, 7, 7, 9])).toBeCloseTo(1, 12)
})

const scene = (truth, seen) => ({ truth, seen })
const all = (v) => ({ opacity: v, speed: v, lightness: v, area: v })

test('what could not be recovered counts against the picture', () => {
  const right = [0.1, 0.4, 0.7, 0.9].map((v) => scene(all(v), all(v)))
  expect(lowest(correlations(right))).toBeCloseTo(1, 12)
  right[3].seen.speed = Number.NaN
  expect(lowest(correlations(right))).toBeLessThan(0.5)
})

test('a sweep tells disorder and what strayed', () => {
  const base = { base: 0, depth: 1 }
  const report = sweepReport([
    { ...base, ...scene(all(0.3), all(0.3)) },
    { ...base, cue: 'speed', ...scene({ ...all(0.3), speed: 0.6 }, { ...all(0.3), speed: 0.5 }) },
    { ...base, cue: 'speed', ...scene({ ...all(0.3), speed: 0.9 }, { ...all(0.3), speed: 0.4, area: 0.33 }) },
  ])
  expect(report.ordered).toBe(0.5)
  expect(report.compared).toBe(6)
  expect(report.worst).toMatchObject({ cue: 'speed', other: 'area' })
  expect(report.within).toBeCloseTo(5 / 6, 12)
})
