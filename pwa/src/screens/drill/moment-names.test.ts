import { expect, test } from 'vitest'
import { namesApart } from './moment-names'

const WIDTH = 320

test('names far apart stand under their marks', () => {
  expect(namesApart(100, 200, WIDTH)).toEqual({ shows: 100, event: 200 })
  expect(namesApart(undefined, 200, WIDTH)).toEqual({ event: 200 })
})

test('names of marks that are close keep off each other, and all keep inside', () => {
  for (const [shows, event] of [[150, 160], [14, 20], [300, 306], [14, 306], [306, 306]] as const) {
    const at = namesApart(shows, event, WIDTH)
    expect(at.event! - at.shows!).toBeGreaterThanOrEqual(52)
    expect(at.shows).toBeGreaterThanOrEqual(26)
    expect(at.event).toBeLessThanOrEqual(WIDTH - 26)
  }
  expect(namesApart(306, undefined, WIDTH)).toEqual({ shows: 294 })
})
