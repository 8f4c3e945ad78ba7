import { expect, test } from 'vitest'
import cases from '../../../content/wording/said.json'
import english from '../generated/sentences.en.json'
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
