// Random histories of a phone and its server: loss, doubling, late delivery,
// crashes of both ends, clock jumps, full storage, a server put back from a
// backup. Runs the app's own outbox (src/local) over a simulated disk and network.
//
//   node pwa/bench/sync-histories.mjs [HISTORIES] [FIRST SEED]
//
// Control: the same histories with a bug planted; a run that does not find it
// finds nothing. Each history is lived twice and must come out the same.
import { load } from './lib/load.mjs'

const histories = Number(process.argv[2] ?? 20_000)
const first = Number(process.argv[3] ?? 1)
const { live, plants } = await load('src/local/sim/history.ts')

const told = { histories: 0, events: 0, crashes: 0, refused: 0, wrong: 0, differing: 0, first_wrong: null, found_after: {} }
for (let seed = first; seed < first + histories; seed++) {
  const [once, again] = [await live(seed), await live(seed)]
  told.histories++
  told.events += once.events
  told.crashes += once.crashes
  told.refused += once.refused
  if (once.print !== again.print) told.differing++
  if (once.wrong.length > 0) {
    told.wrong++
    told.first_wrong ??= { seed, wrong: once.wrong }
  }
}
for (const plant of plants) told.found_after[plant] = await historiesUntilFound(plant)
console.log(JSON.stringify(told))

/** How many histories it took to find a planted bug; null where none did. */
async function historiesUntilFound(plant) {
  for (let n = 0; n < Math.min(histories, 1000); n++) if ((await live(first + n, plant)).wrong.length > 0) return n + 1
  return null
}
