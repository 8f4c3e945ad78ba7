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
  greet(): void {
    this.onopen?.()
  }
}

async function setUp({ random = 1, last = 0 } = {}) {
  const sockets: FakeSocket[] = []
  const waits: number[] = []
  let due: (() => void) | undefined
  let clock = 0
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
  const line = new ClassSocket(dial, hello, { frame: (f) => heard.push(f), line: (l) => lines.push(l) }, last, timing, () => clock)
  line.open()
  await settled()
  const pass = async () => {
    due?.()
    await settled()
  }
  const wait = (ms: number) => void (clock += ms)
  return { line, sockets, waits, heard, lines, pass, wait }
}

/** Lets what was promised come about. */
const settled = () => new Promise((done) => setTimeout(done, 0))

const view = (seq: number) => ({ kind: 'view', seq, now_ms: 0, projector: {} })

test('it says who it is and, coming back, how far it has got', async () => {
  const { sockets, pass } = await setUp()
  sockets[0]!.greet()
  expect(sockets[0]!.sent).toEqual([{ role: 'projector', key: 'k', last: 0 }])
  sockets[0]!.say(view(7))
  sockets[0]!.drop()
  await pass()
  sockets[1]!.greet()
  expect(sockets[1]!.sent).toEqual([{ role: 'projector', key: 'k', last: 7 }])
})

test('a page that kept a view says so from the first', async () => {
  const { sockets } = await setUp({ last: 12 })
  sockets[0]!.greet()
  expect(sockets[0]!.sent).toEqual([{ role: 'projector', key: 'k', last: 12 }])
})

test('the newest view wins, one that it overtook is dropped, other frames all pass', async () => {
  const { sockets, heard } = await setUp()
  sockets[0]!.greet()
  for (const seq of [3, 5, 4, 5, 6]) sockets[0]!.say(view(seq))
  sockets[0]!.say('not json')
  sockets[0]!.say('null')
  sockets[0]!.say({ kind: 'here', seq: 2, now_ms: 0, here: [1] })
  expect(heard.map(({ kind, seq }) => `${kind} ${seq}`)).toEqual(['view 3', 'view 5', 'view 6', 'here 2'])
})

test('waits grow to a limit, each by a random share, and a frame heard starts them afresh', async () => {
  const { sockets, waits, pass, lines } = await setUp({ random: 0 })
  for (let n = 0; n < 6; n++) {
    sockets.at(-1)!.drop()
    await pass()
  }
  expect(waits).toEqual([250, 500, 1000, 2000, 4000, 4000])
  sockets.at(-1)!.greet()
  sockets.at(-1)!.say({ kind: 'current', seq: 0, now_ms: 0 })
  expect(lines.at(-1)).toBe('open')
  sockets.at(-1)!.drop()
  expect(waits.at(-1)).toBe(250)
})

test('a slow page that was dropped comes back; one that was refused three times in a row does not', async () => {
  const { sockets, lines, waits, line, pass } = await setUp()
  sockets[0]!.drop(1013)
  expect(lines.at(-1)).toBe('away')
  for (let n = 0; n < 2; n++) {
    await pass()
    sockets.at(-1)!.drop(1008)
    expect(lines.at(-1)).toBe('away')
  }
  await pass()
  sockets.at(-1)!.drop(1008)
  expect(lines.at(-1)).toBe('refused')
  expect(waits).toHaveLength(3)
  line.open()
  await settled()
  expect(sockets).toHaveLength(4)
})

test('one who is slow to say who it is goes on trying, ever later, and says so each time', async () => {
  const { sockets, lines, waits, pass, wait } = await setUp()
  for (let n = 0; n < 8; n++) {
    wait(5_000)
    sockets.at(-1)!.drop(1008)
    expect(lines.at(-1)).toBe('away')
    await pass()
  }
  expect(sockets).toHaveLength(9)
  expect(waits).toEqual([500, 1000, 2000, 4000, 8000, 8000, 8000, 8000])
  sockets.at(-1)!.greet()
  sockets.at(-1)!.say(view(3))
  expect(lines.at(-1)).toBe('open')
})

test('between two slow hellos a refusal still counts', async () => {
  const { sockets, lines, pass, wait } = await setUp()
  for (const ms of [10, 5_000, 10, 4_999]) {
    expect(lines).not.toContain('refused')
    wait(ms)
    sockets.at(-1)!.drop(1008)
    await pass()
  }
  expect(lines.at(-1)).toBe('refused')
})

test('renewing drops a line that may be dead and opens another at once', async () => {
  const { line, sockets, lines, heard } = await setUp()
  sockets[0]!.greet()
  line.renew()
  await settled()
  expect(sockets[0]!.closed).toBe(true)
  expect(sockets).toHaveLength(2)
  sockets[0]!.drop() // the old one closing late changes nothing
  sockets[0]!.say(view(3)) // nor what it says late
  expect(lines.at(-1)).toBe('opening')
  expect(heard).toEqual([])
  line.close()
  line.renew()
  await settled()
  expect(sockets).toHaveLength(2)
})

test('a line that the device says is lost is away at once, and tried again', async () => {
  const { line, sockets, lines, pass } = await setUp()
  sockets[0]!.greet()
  line.lose()
  expect(lines.at(-1)).toBe('away')
  expect(sockets[0]!.closed).toBe(true)
  await pass()
  expect(sockets).toHaveLength(2)
})
