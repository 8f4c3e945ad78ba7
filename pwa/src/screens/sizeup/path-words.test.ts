import { expect, test } from 'vitest'
import { spellPath } from './path-words'

const opening = (role: 'in' | 'out') => ({ role, nearness: 0, neutral_plane: null, estimated: false }) as const

test('the path is told from inlet to outlet, through what lies between', () => {
  expect(spellPath({ path: ['back_door', 'hall', 'inner_door', 'kitchen', 'window'], openings: {} })).toBe(
    'in by the back door, through the hall, inner door, kitchen, out by the window',
  )
})

test('in and out by one opening is one opening', () => {
  expect(spellPath({ path: ['port', 'port'], openings: {} })).toBe('in and out by the port')
  expect(spellPath({ path: ['port', 'lower_left', 'port'], openings: {} })).toBe('in and out by the port, through the lower left')
})

test('half a path tells the end that was seen', () => {
  expect(spellPath({ path: ['door'], openings: { door: opening('in') } })).toBe('in by the door')
  expect(spellPath({ path: ['door'], openings: { door: opening('out') } })).toBe('out by the door')
  expect(spellPath({ path: [], openings: {} })).toBe('')
})
