import { expect, test } from 'vitest'
import { box } from '../../../buildings/box'
import { burning } from '../../../words/burning'
import { plan, STANDS, waysOut } from './plan'

test('every step names an opening of the box and changes it', () => {
  const stands: Record<string, number> = { ...STANDS }
  for (const { opening, open, ask } of plan) {
    expect(box.openings.map(({ id }) => id)).toContain(opening)
    expect(stands[opening] ?? 0).not.toBe(open)
    stands[opening] = open
    expect(burning.asks[ask]).toMatch(/\?$/)
  }
})

test('no step leaves the box without a port that is open: nothing is shut in and then opened', () => {
  expect(Math.min(...waysOut(plan, box.openings))).toBeGreaterThanOrEqual(1)
  const shutIn = [{ opening: 'port_lower_left', open: 0 }, ...plan]
  expect(Math.min(...waysOut(shutIn, box.openings))).toBe(0)
})

test('no question gives an order or a time', () => {
  for (const { ask } of plan) expect(burning.asks[ask]).not.toMatch(/\b(enter|vent|stay out|keep)\b|\d+ ?s\b|safe|clear/i)
})
