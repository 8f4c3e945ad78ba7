import { words } from '../words/frame'
import { UNSTARTED } from './protocol'
import { expect, test } from 'vitest'
import { EngineClient, EngineProblem, type Port } from './client'
import type { Request } from './protocol'

class FakePort implements Port {
  onmessage: Port['onmessage'] = null
  onerror: Port['onerror'] = null
  requests: Request[] = []
  transfers: Transferable[][] = []

  postMessage(message: unknown, transfer: Transferable[]): void {
    this.requests.push(message as Request)
    this.transfers.push(transfer)
  }

  answer(id: number, gives: unknown): void {
    this.onmessage?.({ data: { id, gives } } as never)
  }

  fail(id: number, where: string): void {
    this.onmessage?.({ data: { id, error: { where, what: 'is -1', do: 'give a width above 0 m' } } } as never)
  }
}

test('the worker starts with the first call and only then', () => {
  let started = 0
  const client = new EngineClient(() => (started++, new FakePort()))
  expect(started).toBe(0)
  void client.version()
  void client.families()
  expect(started).toBe(1)
})

test('answers find their questions, in whatever order they come', async () => {
  const port = new FakePort()
  const client = new EngineClient(() => port)
  const first = client.clone(1)
  const second = client.clone(2)
  port.answer(port.requests[1]!.id, { run: 4 })
  port.answer(port.requests[0]!.id, { run: 3 })
  expect(await first).toEqual({ run: 3 })
  expect(await second).toEqual({ run: 4 })
})

test('a mistake comes back with where, what and what to do', async () => {
  const port = new FakePort()
  const client = new EngineClient(() => port)
  const call = client.open({} as never)
  port.fail(port.requests[0]!.id, 'openings[2].width_m')
  const error = await call.catch((caught: unknown) => caught)
  expect(error).toBeInstanceOf(EngineProblem)
  expect(error).toMatchObject({ where: 'openings[2].width_m', what: 'is -1', do: 'give a width above 0 m' })
})

test('what the engine says by key comes back in words', async () => {
  const port = new FakePort()
  const families = new EngineClient(() => port).families()
  port.answer(port.requests[0]!.id, [{ id: 'one-door', title: 'family/one-door/title', kind: 'read_opening', lesson: 'four-cues' }])
  expect(await families).toMatchObject([{ title: 'One room, one door' }])
})

test('a frame is handed over, not copied', () => {
  const port = new FakePort()
  const frame = new Float64Array(8)
  void new EngineClient(() => port).advance(1, 0.5, frame)
  expect(port.transfers[0]).toEqual([frame.buffer])
})

test('when the worker dies every call fails and the next one starts a fresh worker', async () => {
  const ports: FakePort[] = []
  const client = new EngineClient(() => {
    const port = new FakePort()
    ports.push(port)
    return port
  })
  const lost = client.version()
  ports[0]!.onerror?.({ message: 'out of memory' } as never)
  await expect(lost).rejects.toMatchObject({ where: 'engine', what: 'out of memory' })
  const next = client.version()
  ports[1]!.answer(ports[1]!.requests[0]!.id, { engine: '0.1.0' })
  expect(await next).toEqual({ engine: '0.1.0' })
})

test('an engine that did not start is told in words of the page, not by its own error', async () => {
  const port = new FakePort()
  const lost = new EngineClient(() => port).version()
  port.onmessage?.({ data: { id: port.requests[0]!.id, error: { where: UNSTARTED, what: 'TypeError: Failed to fetch', do: 'not_here' } } } as never)
  await expect(lost).rejects.toThrow(words.app.unstarted.not_here)
})
