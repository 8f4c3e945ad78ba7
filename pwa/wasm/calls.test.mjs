// Calls every function of the engine on the phone. Run by phone_test.go, which
// builds the engine first and says where it lies:
//   LINTEL_WASM=... LINTEL_EXEC=... LINTEL_ITEMS=... node --test pwa/wasm/calls.test.mjs
import assert from 'node:assert/strict'
import { readFileSync } from 'node:fs'
import { after, before, test } from 'node:test'
import { load } from './load.mjs'

let lintel
before(async () => { lintel = await load(process.env.LINTEL_WASM, process.env.LINTEL_EXEC) })
after(() => setImmediate(() => process.exit())) // the Go program would wait for ever

const room = () => ({
  v: 1,
  ambient: { t_c: 20 },
  compartments: [{ id: 'room', width_m: 2.8, depth_m: 2.8, height_m: 2.13, floor_m: 0, lining: 'ceramic_fibre' }],
  openings: [{ id: 'door', from: 'room', to: 'outside', side: 'A', kind: 'door', sill_m: 0, width_m: 0.74, height_m: 1.83, open: 1 }],
  fuels: [{ id: 'burner', in: 'room', kind: 'gas_burner', hrr_kw: [[0, 62.9]], place: 'centre' }],
  end_s: 900,
})

function fine(result) {
  assert.equal(result?.error, undefined, JSON.stringify(result?.error))
  return result
}

function refused(result, where) {
  assert.ok(result?.error, `expected a problem at ${where}`)
  assert.equal(result.error.where, where)
  assert.ok(result.error.what && result.error.do)
}

test('version names engine and content', () => {
  const v = fine(lintel.version())
  assert.match(v.engine, /^\d+\.\d+\.\d+$/)
  assert.ok(v.content.length > 0)
})

test('read gives a finding whose stages sum to one', () => {
  const finding = fine(lintel.read({
    v: 1, looks: [{ openings: [{ id: 'door', kind: 'door', flow: 'out', volume: 4, velocity: 4, density: 4, darkness: 4, churning: true }] }],
  }))
  const sum = Object.values(finding.stage).reduce((a, b) => a + b, 0)
  assert.ok(Math.abs(sum - 1) < 1e-9, `stages sum to ${sum}`)
  assert.ok(finding.because.length > 0)
})

test('read refuses what is no readings file', () => {
  refused(lintel.read({ v: 1, looks: [{ openings: [{ id: 'door', density: NaN }] }] }), 'looks[0].openings[0].density')
  refused(lintel.read({ v: 1, looks: [], extra: 1 }), 'extra')
  refused(lintel.read({ v: 1, looks: [{ openings: [{ id: 'door', density: 9 }] }] }), 'looks[0].openings[0].density')
  const loop = { v: 1 }
  loop.looks = [loop]
  assert.ok(lintel.read(loop).error)
  assert.ok(lintel.read().error)
})

test('a fire opens, runs, branches, is moved and closes', () => {
  const { run, compartments, openings, frameLength } = fine(lintel.open(room()))
  assert.deepEqual([compartments, openings], [['room'], ['door']])
  const out = new Float64Array(frameLength)
  fine(lintel.advance(run, 120, out))
  assert.ok(Math.abs(out[0] - 120) < 0.1, `time ${out[0]}`)
  assert.ok(Math.abs(out[1] - 62.9) < 7, `fire ${out[1]} kW`)
  assert.ok(out[6] > 80 && out[6] < 400, `upper layer ${out[6]} C`)

  const branch = fine(lintel.clone(run)).run
  fine(lintel.move(branch, { opening: 'door', open: 0.2 }))
  const [open, narrow] = [new Float64Array(frameLength), new Float64Array(frameLength)]
  fine(lintel.advance(run, 60, open))
  fine(lintel.advance(branch, 60, narrow))
  assert.ok(narrow[6] > open[6], 'the layer behind a narrowed door is hotter')

  const readings = fine(lintel.readings(run))
  assert.equal(readings.looks[0].openings[0].flow, 'both')
  fine(lintel.read(readings))
  assert.ok(Array.isArray(fine(lintel.events(run))))
  fine(lintel.close(branch))
  refused(lintel.events(branch), 'run')
  refused(lintel.advance(run, -1, out), 'seconds')
  refused(lintel.advance(run, 1, new Float64Array(3)), 'out')
  refused(lintel.move(run, { opening: 'gate', open: 1 }), 'opening')
  fine(lintel.close(run))
})

// The bench goes back to any moment by the clone before it and the moves since: the
// fire must come out the same to the last bit, however its time was cut up.
test('a fire replayed from a clone is the same fire', () => {
  const { run, frameLength } = fine(lintel.open(room()))
  const on = (id, steps, piece) => {
    const out = new Float64Array(frameLength)
    for (let left = steps; left > 0; left -= piece) fine(lintel.advance(id, Math.min(left, piece) * 0.05, out))
    return out
  }
  const shut = { t_s: 0, opening: 'door', open: 0.2, over_s: 0.5 }
  on(run, 607, 2)
  const earlier = fine(lintel.clone(run)).run
  on(run, 413, 7)
  fine(lintel.move(run, shut))
  const first = on(run, 333, 10)
  on(earlier, 413, 400)
  fine(lintel.move(earlier, shut))
  assert.deepEqual(on(earlier, 333, 400), first)
  for (const id of [run, earlier]) fine(lintel.close(id))
})

test('open refuses an opening to nowhere and a missing fuel', () => {
  const nowhere = room()
  nowhere.openings[0].to = 'cellar'
  refused(lintel.open(nowhere), 'openings[0].to')
  const strange = room()
  strange.fuels[0] = { id: 'x', in: 'room', kind: 'moon_cheese', mass_kg: 1 }
  refused(lintel.open(strange), 'fuels[0].kind')
})

// Floats differ in the last bit between machines unless one takes care: an item
// must come out alike to the last digit, or a server could not check a phone.
test('every item and verdict is the one the server makes', () => {
  const { engine, content } = lintel.version()
  const families = fine(lintel.families())
  const expected = JSON.parse(readFileSync(process.env.LINTEL_ITEMS, 'utf8'))
  assert.ok(families.length >= 14)
  assert.equal(expected.length, 2 * families.length)
  for (const [i, family] of families.entries()) {
    const item = fine(lintel.item(family.id, 7))
    assert.deepEqual(item, expected[2 * i], family.id)
    const replies = item.question.asks.map(({ id }) => ({ ask: id, unsure: true }))
    const verdict = fine(lintel.score({ v: 1, engine, content, family: family.id, seed: 7, replies, took_s: 9 }))
    assert.deepEqual(verdict, expected[2 * i + 1], family.id)
  }
})

test('an answer that is the truth scores one', () => {
  const { engine, content } = lintel.version()
  const answer = (replies) => ({ v: 1, engine, content, family: 'two-way-door', seed: 3, replies, took_s: 9 })
  const { question } = fine(lintel.item('two-way-door', 3))
  const unsure = fine(lintel.score(answer(question.asks.map(({ id }) => ({ ask: id, unsure: true })))))
  assert.ok(unsure.score > 0 && unsure.score < 1)
  const perfect = fine(lintel.score(answer(unsure.parts.map((part) => part.truth[0]))))
  assert.equal(perfect.score, 1)
  assert.ok(perfect.why && perfect.rule && perfect.source && perfect.tell)
})

test('item and score refuse what is not ours', () => {
  refused(lintel.item('nobody', 1), 'family')
  refused(lintel.item(lintel.families()[0].id, -1), 'seed')
  refused(lintel.item(lintel.families()[0].id, 1.5), 'seed')
  refused(lintel.score({ v: 1, engine: 'x', content: 'y', family: 'z', seed: 1, replies: [], took_s: 1 }), 'engine')
})
