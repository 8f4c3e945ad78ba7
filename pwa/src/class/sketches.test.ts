import { afterEach, beforeEach, expect, test, vi } from 'vitest'
import type { Scenario } from '../wire.gen'
import { forgetSketch, keepSketch, sketches } from './sketches'

const scenario = { v: 1 } as Scenario
let disk: Map<string, string>

beforeEach(() => {
  disk = new Map()
  let clock = 0
  vi.spyOn(Date, 'now').mockImplementation(() => ++clock)
  vi.stubGlobal('localStorage', {
    getItem: (key: string) => disk.get(key) ?? null,
    setItem: (key: string, value: string) => void disk.set(key, value),
    removeItem: (key: string) => void disk.delete(key),
  })
})
afterEach(() => {
  vi.restoreAllMocks()
  vi.unstubAllGlobals()
})

test('what is kept comes back, the newest first, and goes when it is forgotten', () => {
  expect(keepSketch({ title: 'first', scenario, moment_s: 60 })).toBe(true)
  expect(keepSketch({ title: 'second', scenario, moment_s: 90 })).toBe(true)
  expect(sketches().map(({ title }) => title)).toEqual(['second', 'first'])
  forgetSketch(sketches()[0]!.id)
  expect(sketches().map(({ title }) => title)).toEqual(['first'])
})

test('the oldest gives way once there are many', () => {
  for (let n = 0; n < 15; n++) keepSketch({ title: String(n), scenario, moment_s: n })
  expect(sketches()).toHaveLength(12)
  expect(sketches().at(-1)!.title).toBe('3')
})

test('a browser that keeps nothing is found out', () => {
  vi.stubGlobal('localStorage', { getItem: () => null, setItem: () => { throw new Error('full') } })
  expect(keepSketch({ title: 'lost', scenario, moment_s: 60 })).toBe(false)
})
