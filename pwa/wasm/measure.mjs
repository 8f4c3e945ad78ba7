// Times the engine's calls and prints one JSON object (see server/phone):
//   node measure.mjs ENGINE.wasm WASM_EXEC.js < readings.json
import { readFileSync } from 'node:fs'
import { load } from './load.mjs'
import { sixRooms } from './six-rooms.mjs'

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
