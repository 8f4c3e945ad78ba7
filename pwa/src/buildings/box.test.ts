import { readFileSync } from 'node:fs'
import { expect, test } from 'vitest'
import { box } from './box'

// The fire model is tested on this very box; its copy is engine/sim/testdata/box.json.
const tested = JSON.parse(readFileSync(new URL('../../../engine/sim/testdata/box.json', import.meta.url), 'utf8'))

test('the box on the bench is the box that the fire model is tested on', () => {
  expect(box.compartments).toEqual(tested.compartments)
  expect(box.openings).toEqual(tested.openings)
})
