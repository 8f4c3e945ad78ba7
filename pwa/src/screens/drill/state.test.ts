import { expect, test, vi } from 'vitest'
import type { Item, Verdict } from '../../wire.gen'

const shelf = vi.hoisted(() => ({ next: 1, recorded: 0 }))
vi.mock('../../worker/client', () => ({ engine: { score: async () => ({ engine: '0.0.0' }) as Verdict } }))
vi.mock('../../local/store', () => ({
  isFull: () => false,
  store: async () => ({
    kept: async () => undefined,
    keep: async () => {},
    record: async () => void shelf.recorded++,
    journal: { self: async () => ({ next: shelf.next }) },
  }),
}))
const { commit, item, newcomer, phase, restore, set } = await import('./state')

const scene = { family: 'f', seed: 1 }
const asked = { ...scene, title: 't', kind: 'one_look', question: { asks: [] } } as unknown as Item

test('whoever has committed a scene is new no more', async () => {
  await restore()
  expect(newcomer.value).toBe(true)
  set.value = { scenes: [scene], done: [], replies: [] }
  item.value = asked
  await commit()
  expect([phase.value, shelf.recorded]).toEqual(['revealed', 1])
  expect(newcomer.value).toBe(false)
})
