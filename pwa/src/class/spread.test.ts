import { expect, test } from 'vitest'
import { ownMarks } from './spread'

const at = (name: string, plane?: number) => ({ name, reply: { ask: 'plane@door', ...(plane === undefined ? { unsure: true } : { plane }) } })

test('two on one phone who put the plane at one height share a mark, and neither name hides the other', () => {
  expect(ownMarks([at('Kestrel', 0.45), at('Ruff', 0.45)])).toEqual([{ names: 'Kestrel, Ruff', share: 0.45 }])
  expect(ownMarks([at('Kestrel', 0.4), at('Ruff', 0.48)])).toEqual([{ names: 'Kestrel, Ruff', share: 0.44 }])
})

test('apart, each has a mark of their own, and who could not tell has none', () => {
  expect(ownMarks([at('Kestrel', 0.4), at('Ruff', 0.55)])).toEqual([{ names: 'Kestrel', share: 0.4 }, { names: 'Ruff', share: 0.55 }])
  expect(ownMarks([at('Kestrel'), at('Ruff', 0.55)])).toEqual([{ names: 'Ruff', share: 0.55 }])
})
