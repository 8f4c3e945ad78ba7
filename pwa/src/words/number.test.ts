import { expect, test } from 'vitest'
import { decimal, decimalPoint, rounded } from './number'

// Node's own language is English here: a point, and no groups.
test('so many decimals, no groups and no minus before nothing', () => {
  expect(decimal(1234.56, 1)).toBe('1234.6')
  expect(decimal(0, 2)).toBe('0.00')
  expect(decimal(-0.04, 1)).toBe('0.0')
  expect(decimal(-1.25, 1)).toBe('-1.3')
})

test('no zeros at the end', () => {
  expect(rounded(2, 1)).toBe('2')
  expect(rounded(2.25, 1)).toBe('2.3')
})

test('what stands before decimals is told by itself', () => {
  expect(decimalPoint).toBe('.')
})
