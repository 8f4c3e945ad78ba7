import { expect, test } from 'vitest'
import english from '../../generated/sentences.en.json'
import spanish from '../../generated/sentences.es.json'
import type { HazardFinding } from '../../wire.gen'
import { sizeUp as inEnglish } from '../../words/en/size-up'
import { sizeUp as inSpanish } from '../../words/es/size-up'
import { hazardSaid } from './hazard-said'

const hazard = (conditions: string[], flagged = false): HazardFinding => ({ event: 'backdraft', probability: 0.02, flagged, conditions })

test('what was not looked for is no sign and no absence of one', () => {
  const said = hazardSaid(hazard(['not looked for yet: pulsing, glass, density']))
  expect(said).toEqual({ standing: 'unlooked', seen: [], quiet: ['not looked for yet: pulsing, glass, density'] })
})

test('no sign is said only where the engine says so', () => {
  expect(hazardSaid(hazard(['no sign of it seen from here'])).standing).toBe('no_sign')
  expect(hazardSaid(hazard(['no sign of it seen from here', 'not looked for yet: glass']))).toEqual({
    standing: 'unlooked',
    seen: [],
    quiet: ['not looked for yet: glass', 'no sign of it seen from here'],
  })
  expect(hazardSaid(hazard([])).standing).toBe('no_sign')
})

test('a condition that was seen stands before what was not looked for', () => {
  const said = hazardSaid(hazard(['smoke breathes in and out', 'not looked for yet: glass']))
  expect(said.standing).toBe('some_seen')
  expect(said.seen).toEqual(['smoke breathes in and out'])
  expect(hazardSaid(hazard(['smoke breathes in and out'], true)).standing).toBe('flagged')
})

test.each([
  ['English', english, inEnglish],
  ['Spanish', spanish, inSpanish],
])('what the catalogue says of no sign is known as such in %s', (_, catalogue, words) => {
  const unlooked = catalogue['hazard/not_looked_for']
  const noSign = catalogue['hazard/no_sign']
  expect(hazardSaid(hazard([unlooked, noSign]), words)).toEqual({ standing: 'unlooked', seen: [], quiet: [unlooked, noSign] })
  expect(hazardSaid(hazard([noSign]), words).standing).toBe('no_sign')
})
