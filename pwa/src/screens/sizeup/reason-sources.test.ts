import { expect, test } from 'vitest'
import { sourcesOf } from './reason-sources'

test('a source that several reasons cite stands once, where it is first cited', () => {
  expect(sourcesOf([{ source: 'b, a' }, { source: 'a; c' }, { source: '' }])).toEqual(['b', 'a', 'c'])
})
