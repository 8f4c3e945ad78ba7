import { expect, test } from 'vitest'
import { dressed } from './dress'

const all = { 'family/one-door/title': 'One room, one door', 'ask/volume': 'Volume of smoke?' }

test('titles of scenes and texts of questions are put into words; what a person wrote stays', () => {
  const view = {
    title: 'Recruits, week 3',
    scenes: [{ id: 's1', title: 'family/one-door/title', note: 'family/one-door/title' }],
    compare: { asks: [{ ask: { id: 'q', text: 'ask/volume' }, planes: [0.4], apart: null }] },
  }
  expect(dressed(view, all)).toEqual({
    title: 'Recruits, week 3',
    scenes: [{ id: 's1', title: 'One room, one door', note: 'family/one-door/title' }],
    compare: { asks: [{ ask: { id: 'q', text: 'Volume of smoke?' }, planes: [0.4], apart: null }] },
  })
})
