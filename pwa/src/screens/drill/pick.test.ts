import { expect, test } from 'vitest'
import type { FamilyInfo } from '../../worker/protocol'
import { pickSet, setSize } from './pick'

const families: FamilyInfo[] = (['read_opening', 'flow_plane', 'call_stage', 'predict_move'] as const).flatMap((kind) =>
  [1, 2].map((n) => ({ id: `${kind}_${n}`, title: '', kind, lesson: '' })),
)

const below = (n: number) => Math.floor(Math.random() * n)
let next = 0
const seed = () => next++

test('a set holds every kind, and no family twice', () => {
  for (let turn = 0; turn < 200; turn++) {
    const set = pickSet(families, below, seed)
    expect(set).toHaveLength(setSize)
    expect(new Set(set.map(({ family }) => family)).size).toBe(setSize)
    expect(new Set(set.map(({ family }) => family.replace(/_\d$/, ''))).size).toBe(4)
  }
})

test('every family comes up in the long run, and at every place', () => {
  const places = new Set<string>()
  for (let turn = 0; turn < 2000; turn++) {
    pickSet(families, below, seed).forEach(({ family }, at) => places.add(`${family} ${at}`))
  }
  expect(places.size).toBe(families.length * setSize)
})

test('few families are repeated with other seeds, none at all gives nothing', () => {
  const set = pickSet(families.slice(0, 2), below, seed)
  expect(set).toHaveLength(setSize)
  expect(new Set(set.map((scene) => scene.seed)).size).toBe(setSize)
  expect(pickSet([], below, seed)).toEqual([])
})
