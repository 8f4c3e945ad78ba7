import { expect, test } from 'vitest'
import { firstFair } from './fair'

/** Makes numbers from so many on; says which were asked for. */
function maker(from: number) {
  const asked: number[] = []
  const make = async (n: number) => {
    asked.push(n)
    if (n < from) throw new Error(`${n} is unfair`)
    return `made ${n}`
  }
  return { asked, make }
}
const nextOne = (n: number) => n + 1

test('the one wanted is made where it can be', async () => {
  const { asked, make } = maker(0)
  expect(await firstFair(3, make, nextOne)).toBe('made 3')
  expect(asked).toEqual([3])
})

test('another is tried in its stead', async () => {
  const { asked, make } = maker(3)
  const turns: number[] = []
  expect(await firstFair<number, string>(1, make, (n, turn) => (turns.push(turn), n + 1))).toBe('made 3')
  expect([asked, turns]).toEqual([[1, 2, 3], [1, 2]])
})

test('after six it gives up and says what was wrong with the last', async () => {
  const { asked, make } = maker(100)
  await expect(firstFair(1, make, nextOne)).rejects.toThrow('6 is unfair')
  expect(asked).toHaveLength(6)
})

test('where there is none to try it gives up at once', async () => {
  const { asked, make } = maker(100)
  await expect(firstFair(1, make, async () => undefined)).rejects.toThrow('1 is unfair')
  expect(asked).toEqual([1])
})
