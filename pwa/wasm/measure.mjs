// Times the engine's calls and prints one JSON object (see server/phone):
//   node measure.mjs ENGINE.wasm WASM_EXEC.js < readings.json
import { readFileSync } from 'node:fs'
import { load } from './load.mjs'

const began = performance.now()
const lintel = await load(process.argv[2], process.argv[3])
const startMs = performance.now() - began

function fine(result) {
  if (result?.error) throw new Error(JSON.stringify(result.error))
  return result
}

function timed(calls, call) {
  const took = []
  for (let i = 0; i < calls; i++) {
    const start = performance.now()
    fine(call(i))
    took.push(performance.now() - start)
  }
  took.sort((a, b) => a - b)
  const at = (share) => took[Math.min(took.length - 1, Math.floor(took.length * share))]
  return { calls: took.length, median_ms: at(0.5), p95_ms: at(0.95), most_ms: took.at(-1) }
}

// A house of six rooms on two floors, every opening of which is moved now and then.
function sixRooms() {
  const room = (id, x, floor) => ({ id, width_m: 3.6, depth_m: 3.6, height_m: 2.4, floor_m: floor, lining: 'gypsum', x_m: x, y_m: 0 })
  const door = (id, from, to) => ({ id, from, to, side: 'D', kind: 'door', sill_m: 0, width_m: 0.8, height_m: 2, open: 1 })
  const window = (id, from) => ({ id, from, to: 'outside', side: 'A', kind: 'window', sill_m: 0.9, width_m: 1.2, height_m: 1.1, open: 0.5 })
  const compartments = [room('a', 0, 0), room('b', 3.6, 0), room('c', 7.2, 0), room('d', 0, 2.6), room('e', 3.6, 2.6), room('f', 7.2, 2.6)]
  const openings = [
    door('ab', 'a', 'b'), door('bc', 'b', 'c'), door('de', 'd', 'e'), door('ef', 'e', 'f'),
    { id: 'stair', from: 'e', to: 'b', kind: 'floor_hole', area_m2: 1.8, shape: 'square', open: 1 },
    ...compartments.map(({ id }) => window(`window_${id}`, id)),
  ]
  const moves = Array.from({ length: 60 }, (_, i) => ({ t_s: 10 * i, opening: openings[i % openings.length].id, open: (i % 3) / 2, over_s: 2 }))
  const fuels = [{ id: 'sofa', in: 'a', kind: 'upholstered', mass_kg: 25, ignite_s: 0, place: 'wall' }]
  return { v: 1, ambient: { t_c: 15 }, compartments, openings, fuels, moves, end_s: 900 }
}

function fire() {
  const { run, frameLength } = fine(lintel.open(sixRooms()))
  const out = new Float64Array(frameLength)
  fine(lintel.advance(run, 60, out))
  const start = performance.now()
  fine(lintel.advance(run, 540, out))
  const speed = 540 / ((performance.now() - start) / 1000)
  const frame = timed(300, () => lintel.advance(run, 1 / 30, out))
  fine(lintel.close(run))
  return { speed, frame }
}

const readings = JSON.parse(readFileSync(0, 'utf8'))
const read = timed(300, () => lintel.read(readings))
const families = fine(lintel.families())
const item = timed(families.length, (i) => lintel.item(families[i].id, 11))
const { speed, frame } = fire()

process.stdout.write(JSON.stringify({ start_ms: startMs, read, item, frame, fire_speed: speed }), () => process.exit())
