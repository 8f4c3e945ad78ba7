import { expect, test } from 'vitest'
import { cautionsAt } from './cautions'

test('who decides stands first, at every place', () => {
  for (const place of ['prop', 'prop_burn', 'size_up', 'reading']) expect(cautionsAt(place)[0]!.id).toBe('no_authority')
})

test('a live burn has its own cautions, the bench has not', () => {
  const at = (place: string) => cautionsAt(place).map(({ id }) => id)
  expect(at('prop_burn')).toEqual(expect.arrayContaining(['no_permission', 'no_plastics', 'live_fire', 'smoke_harms']))
  expect(at('prop')).toContain('live_fire')
  expect(at('prop')).not.toContain('smoke_harms')
})
