import { expect, test } from 'vitest'
import { live, plants } from './history'

// 300 here, 20,000 by pwa/bench/sync-histories.mjs, more by its argument.
const histories = 300

test('random histories: none lost, none doubled', async () => {
  const seed = Number(process.env['SEED'] ?? Date.now() % 1e9)
  let [events, crashes, refused] = [0, 0, 0]
  for (let n = 0; n < histories; n++) {
    const lived = await live(seed + n)
    expect(lived.wrong, `SEED=${seed + n}`).toEqual([])
    events += lived.events
    crashes += lived.crashes
    refused += lived.refused
  }
  // What never happens proves nothing.
  expect(events).toBeGreaterThan(histories * 5)
  expect(crashes).toBeGreaterThan(histories)
  expect(refused).toBeGreaterThan(histories / 10)
}, 60_000)

test('a history lived again is the same', async () => {
  for (let seed = 1; seed <= 50; seed++) expect((await live(seed)).print).toBe((await live(seed)).print)
  expect((await live(1)).print).not.toBe((await live(2)).print)
})

test.each(plants)('the planted bug "%s" is found', async (plant) => {
  for (let seed = 1; seed <= histories; seed++) if ((await live(seed, plant)).wrong.length > 0) return
  expect.fail('not found')
})
