import { expect, test } from 'vitest'
import { stacked } from './spread-parts'

test('dots at one place stand beside each other, those at another begin anew', () => {
  expect(stacked([0.5, 0.51, 0.8], 20)).toEqual([{ share: 0.5, at: 0 }, { share: 0.51, at: 1 }, { share: 0.8, at: 0 }])
})
