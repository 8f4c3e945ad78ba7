import { expect, test } from 'vitest'
import type { Timing } from '../local/sync'
import type { ClassFrame } from '../wire.gen'
import { ClassSocket, type Hello, type Line } from './socket'

/** A socket whose other end the test holds. */
class FakeSocket {
  sent: unknown[] = []
  closed = false
  onopen: (() => void) | null = null
  onmessage: ((event: { data: string }) => void) | null = null
  onclose: ((event: { code: number }) => void) | null = null
  send(text: string): void {
    this.sent.push(JSON.parse(text))
  }
  close(): void {
    this.closed = true
  }
  say(frame: unknown): void {
    this.onmessage?.({ data: typeof frame === 'string' ? frame : JSON.stringify(frame) })
  }
  drop(code = 1006): void {
    this.onclose?.({ code })
  }
  async greet(): Promise<void> {
    this.onopen?.()
    await Promise.resolve()
    await Promise.resolve()
  }
}

function setUp({ random = 1, last = 0 } = {}) {
  const sockets: FakeSocket[] = []
  const waits: number[] = []
  let due: (() => void) | undefined
  const timing: Timing = {
    random: () => random,
    setTimer: (run, ms) => {
      waits.push(ms)
      due = run
    },
    clearTimer: () => {
      due = undefined
    },
  }
  const heard: ClassFrame[] = []
  const lines: Line[] = []
  const dial = () => {
    const socket = new FakeSocket()
    sockets.push(socket)
    return socket as unknown as WebSocket
  }
  const hello = async (): Promise<Hello> => ({ role: 'projector', key: 'k' })
  const line = new ClassSocket(dial, hello, { frame: (f) => heard.push(f), line: (l) => lines.push(l) }, last, timing)
  line.open()
  return { line, sockets, waits, heard, lines, pass: () => due?.() }
}

const view = (seq: number) => ({ kind: 'view', seq, now_ms: 0, projector: {} })

test('it says who it is and, coming back, how far it has got', async () => {
  const { sockets, pass } = setUp()
  await sockets[0]!.greet()
  expect(sockets[0]!.sent).toEqual([{ role: 'projector', key: 'k', last: 0 }])
  sockets[0]!.say(view(7))
  sockets[0]!.drop()
  pass()
  await sockets[1]!.greet()
  expect(sockets[1]!.sent).toEqual([{ role: 'projector', key: 'k', last: 7 }])
})

test('a page that kept a view says so from the first', async () => {
  const { sockets } = setUp({ last: 12 })
  await sockets[0]!.greet()
  expect(sockets[0]!.sent).toEqual([{ role: 'projector', key: 'k', last: 12 }])
})

test('the newest view wins, one that it overtook is dropped, other frames all pass', async () => {
  const { sockets, heard } = setUp()
  await sockets[0]!.greet()
  for (const seq of [3, 5, 4, 5, 6]) sockets[0]!.say(view(seq))
  sockets[0]!.say('not json')
  sockets[0]!.say('null')
  sockets[0]!.say({ kind: 'here', seq: 2, now_ms: 0, here: [1] })
  expect(heard.map(({ kind, seq }) => `${kind} ${seq}`)).toEqual(['view 3', 'view 5', 'view 6', 'here 2'])
})

test('waits grow to a limit, each by a random share, and a frame heard starts them afresh', async () => {
  const { sockets, waits, pass, lines } = setUp({ random: 0 })
  for (let n = 0; n < 6; n++) {
    sockets.at(-1)!.drop()
    pass()
  }
  expect(waits).toEqual([250, 500, 1000, 2000, 4000, 4000])
  await sockets.at(-1)!.greet()
  sockets.at(-1)!.say({ kind: 'current', seq: 0, now_ms: 0 })
  expect(lines.at(-1)).toBe('open')
  sockets.at(-1)!.drop()
  expect(waits.at(-1)).toBe(250)
})

test('a slow page that was dropped comes back; one that was refused does not', async () => {
  const { sockets, lines, waits, line } = setUp()
  sockets[0]!.drop(1013)
  expect(lines.at(-1)).toBe('away')
  line.open()
  sockets[1]!.drop(1008)
  expect(lines.at(-1)).toBe('refused')
  expect(waits).toHaveLength(1)
  line.open()
  expect(sockets).toHaveLength(2)
})

test('renewing drops a line that may be dead and opens another at once', async () => {
  const { line, sockets, lines, heard } = setUp()
  await sockets[0]!.greet()
  line.renew()
  expect(sockets[0]!.closed).toBe(true)
  expect(sockets).toHaveLength(2)
  sockets[0]!.drop() // the old one closing late changes nothing
  sockets[0]!.say(view(3)) // nor what it says late
  expect(lines.at(-1)).toBe('opening')
  expect(heard).toEqual([])
  line.close()
  line.renew()
  expect(sockets).toHaveLength(2)
})

test('a line that the device says is lost is away at once, and tried again', async () => {
  const { line, sockets, lines, pass } = setUp()
  await sockets[0]!.greet()
  line.lose()
  expect(lines.at(-1)).toBe('away')
  expect(sockets[0]!.closed).toBe(true)
  pass()
  expect(sockets).toHaveLength(2)
})
