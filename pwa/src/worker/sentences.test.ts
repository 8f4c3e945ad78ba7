import { expect, test } from 'vitest'
import cases from '../../../content/wording/said.json'
import english from '../generated/sentences.en.json'
import spanish from '../generated/sentences.es.json'
import type { Event } from '../wire.gen'
import { chooseUnits } from '../words/units'
import { dress, say } from './sentences'

// The server's own test reads the same cases: both must say the same.
test.each(cases)('$keys', ({ keys, said }) => {
  expect(say(keys, english)).toBe(said)
  expect(say(said, english)).toBe(said)
})

test('a verdict is dressed without losing anything', () => {
  const verdict = {
    v: 1, engine: '1', score: 1, parts: [{ ask: 'flow@door', kind: 'flow', given: { ask: 'flow@door', flow: 'in' }, truth: [], error: 0, right: true, remark: 'remark/right|truth=@flow/in' }],
    why: 'why/flow/in', rule: 'rule/low-in-high-out/text', source: 'rule/low-in-high-out/source', tell: 'family/nobody/tell?tell/flow/in', exact: { v: 1, looks: [] },
  } as never
  const dressed = dress.score(verdict, english)
  expect(dressed.parts[0]).toMatchObject({ ask: 'flow@door', right: true, remark: 'right: in' })
  for (const text of [dressed.why, dressed.rule, dressed.source, dressed.tell]) expect(text).toMatch(/^[A-Z].*[a-z.]/)
})

test('a finding keeps its shape, and a note that is not there stays away', () => {
  const finding = {
    v: 1, hazards: [{ event: 'backdraft', probability: 0.1, flagged: false, conditions: ['hazard/no_sign'] }],
    because: [{ rule: 'closed-and-faint', text: 'rule/closed-and-faint/text', weight: 1, source: 'rule/closed-and-faint/source' }], against: [], cautions: [],
  } as never
  const dressed = dress.read(finding, english)
  expect(dressed).not.toHaveProperty('path_note')
  expect(dressed.hazards[0]!.conditions).toEqual(['no sign of it seen from here'])
  expect(dressed.because[0]!.text).not.toContain('/')
})

// Every slot of every sentence is one that the engine can fill, and no brace is left open.
test('slots are well formed', () => {
  for (const [id, text] of Object.entries(english)) expect(text.replaceAll(/\{[a-z_]+\}/g, ''), id).not.toMatch(/[{}]/)
})

// What a fire does is told in the page's language and in the units that were chosen.
const hot: Event = { t_s: 9, kind: 'flashover', where: 'hall', cause: 'cause/opened|s=12|opening=@opening/port_lower_left\ncause/starved_gas|t=@degrees/552|heat=@number/3.0|oxygen=@number/1.5\ncause/water|water=@litres/3.8' }

test('an event is told in the units of the page', () => {
  chooseUnits('metric')
  expect(dress.events([hot], english)).toEqual([{
    t_s: 9, kind: 'Flashover', where: 'hall',
    cause: 'Opened 12 s before: the port lower left. Hot gas, 550 °C, rich in fuel (3.0 MJ/kg) and poor in oxygen (1.5 %), no flame. Water, 3.8 l so far.',
  }])
  chooseUnits('us')
  const { cause } = dress.events([hot], english)[0]!
  expect(cause).toContain('Hot gas, 1030 °F, rich')
  expect(cause).toContain('Water, 1 gal so far.')
  expect(cause).not.toMatch(/°C|\d l\b/)
  chooseUnits('metric')
})

test('and in Spanish words', () => {
  const [told] = dress.events([{ ...hot, kind: 'extinction' }], spanish)
  expect(told!.kind).toBe('La llama se apagó')
  expect(told!.cause).toMatch(/^Se abrió 12 s antes: .*Gas caliente, 550 °C, .* 3\.8 l hasta ahora\.$/)
})
