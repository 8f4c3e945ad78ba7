import { expect, test } from 'vitest'
import { sourcesOf } from './reason-sources'

test('a source that several reasons cite stands once, where it is first cited', () => {
  expect(sourcesOf([{ source: 'b; a' }, { source: 'a; c' }, { source: '' }])).toEqual(['b', 'a', 'c'])
})

test('a title with a comma is one source', () => {
  expect(sourcesOf([{ source: 'Experiments with burners, 2018; Fire Ventilation' }])).toEqual(['Experiments with burners, 2018', 'Fire Ventilation'])
})
