import { expect, test } from 'vitest'
import { broken } from './report-picture'

const letters = (text: string) => text.length

test('lines break at spaces, none is wider than the picture, and no word is lost', () => {
  const text = 'Side Alpha, door, open: out above, in below, volume most'
  const lines = broken(text, 20, letters)
  expect(Math.max(...lines.map(letters))).toBeLessThanOrEqual(20)
  expect(lines.join(' ')).toBe(text)
})

test('a word longer than the picture has a line of its own', () => {
  expect(broken('a ventilation-induced flashover', 10, letters)).toEqual(['a', 'ventilation-induced', 'flashover'])
})
