// A record of some weeks of practice: real scenes, the engine's own verdicts, written
// down by the app's own journal, so that the Log can be looked at as someone's who
// has practised. Nobody's data: chance answers, wrong less often as weeks go by.
import { fileURLToPath } from 'node:url'
import 'fake-indexeddb/auto'
import { load } from '../../bench/lib/load.mjs'
import { load as loadEngine } from '../../wasm/load.mjs'

const worker = fileURLToPath(new URL('../../src/worker', import.meta.url))
const dayMS = 86_400_000
const hands = { before: 0.45, after: 0.8 } // share answered as it was, in the first week and in the last
const degrees = [0.5, 0.6, 0.75, 0.9, 0.99]

/** The record of so many answers over so many days, the last of them an hour ago. */
export async function practise({ answers = 120, days = 28, seed = 1 } = {}) {
  const [{ Journal }, { DiskShelf }, { openDatabase }, { Chance }] = await Promise.all(
    ['local/journal.ts', 'local/shelf.ts', 'local/db.ts', 'local/sim/chance.ts'].map((path) => load(`src/${path}`)),
  )
  const engine = await loadEngine(`${worker}/lintel.wasm`, `${worker}/wasm_exec.js`)
  const chance = new Chance(seed)
  const began = Date.now() - days * dayMS
  let now = began
  const hex = (bytes) => Array.from({ length: 2 * bytes }, () => chance.below(16).toString(16)).join('')
  const shelf = new DiskShelf(await openDatabase(`record ${seed}`))
  const journal = new Journal(shelf, { now: () => now, hex })
  const families = engine.families()
  for (let n = 0; n < answers; n++) {
    now = began + Math.floor((Math.floor(n / 8) * days * dayMS) / Math.ceil(answers / 8)) + (n % 8) * 40_000
    const item = engine.item(families[chance.below(families.length)].id, seed * 10_000 + n)
    if (item.error) continue // a seed whose scene would be unfair has none
    const body = answered(engine, item, hands.before + ((hands.after - hands.before) * n) / answers, chance)
    await journal.append('answer', body.verdict.engine, body)
  }
  return { self: await journal.self(), events: await shelf.after(0) }
}

/** One answer with its verdict: as it was so often, else one beside it. */
function answered(engine, item, skill, chance) {
  const { v, engine: version, content, family, seed, question } = item
  const given = (replies, more = {}) => ({ v, engine: version, content, family, seed, replies, took_s: 10 + chance.below(30), ...more })
  const blank = question.asks.map(({ id, kind }) => ({ ask: id, ...(kind === 'moment' ? { quiet: true } : { unsure: true }) }))
  const { parts } = engine.score(given(blank))
  const replies = parts.map((part) => reply(part, chance.next() < skill, chance))
  const confidence = degrees[Math.min(4, Math.floor(5 * chance.next() ** (1.3 - skill)))]
  const answer = given(replies, question.asks.some(({ choice }) => choice) && { confidence })
  return { answer, verdict: engine.score(answer) }
}

const wrong = {
  level: (level, chance) => Math.min(4, Math.max(0, level + (chance.below(3) ? 1 : -1))),
  plane: (plane, chance) => Math.min(1, Math.max(0, plane + 0.3 * (chance.next() - 0.3))),
  flow: (_, chance) => ['in', 'out', 'both'][chance.below(3)],
  stage: (_, chance) => ['growth', 'pre_flashover', 'fully_developed', 'decay'][chance.below(4)],
  regime: (regime) => (regime === 'fuel_limited' ? 'ventilation_limited' : 'fuel_limited'),
  change: (_, chance) => ['less', 'same', 'more'][chance.below(3)],
  trend: (_, chance) => ['better', 'steady', 'worse'][chance.below(3)],
  pick: (pick) => (pick === 'first' ? 'second' : 'first'),
}

function reply({ ask, truth: [truth] }, right, chance) {
  const { event_s: _, ...said } = truth
  if (said.at_s !== undefined) return right ? { ask, at_s: Math.round(said.at_s + 2 + chance.below(8)) } : { ask, quiet: true }
  const key = Object.keys(said).find((name) => name in wrong)
  if (right || !key) return { ...said, ask }
  return chance.below(12) ? { ask, [key]: wrong[key](said[key], chance) } : { ask, unsure: true }
}

/** Puts a record in the place of what a device holds. A page that is open reads it when it is loaded anew. */
export function putOnDevice(page, record) {
  return page.evaluate(
    ({ self, events }) =>
      new Promise((resolve, reject) => {
        const opening = indexedDB.open('lintel')
        opening.onerror = () => reject(opening.error)
        opening.onsuccess = () => {
          const putting = opening.result.transaction(['events', 'kept'], 'readwrite')
          putting.objectStore('events').clear()
          for (const event of events) putting.objectStore('events').add(event)
          putting.objectStore('kept').put(self, 'self')
          putting.onerror = () => reject(putting.error)
          putting.oncomplete = () => {
            opening.result.close()
            resolve()
          }
        }
      }),
    record,
  )
}
