import { realTiming, type Timing } from '../local/sync'
import { HELLO_PATIENCE_MS, type ClassFrame, type ClassHello } from '../wire.gen'

// The live line of a class: whole views, numbered; the newest one counts. It
// comes back by itself, and says where it stands each time.

/** How the line stands. Refused is final: this page may not listen here. */
export type Line = 'opening' | 'open' | 'away' | 'refused'

export interface Listener {
  frame(frame: ClassFrame): void
  line(now: Line): void
}

/** Who asks; how far one has got is added for every connection. */
export type Hello = Omit<ClassHello, 'last'>

// The first try again comes after about half a second, then ever later up to
// 8 s, each time a random share of it, so that a class does not come back all in
// one instant. Chosen by us: a lesson goes on while one is away.
const firstWait = 500
const longestWait = 8_000

// The server's close code for a hello that was wrong (RFC 6455, section 7.4.1).
// Chosen by us: so often in a row, and it is meant.
const policyViolation = 1008
const mostRefusals = 3
// It closes so too on one who took longer than HELLO_PATIENCE_MS to say who they
// are. A busy phone is slow again and again, and no less welcome.

/** Keeps one page on the live line of one class. */
export class ClassSocket {
  readonly #dial: () => WebSocket
  readonly #hello: () => Promise<Hello>
  readonly #listener: Listener
  readonly #timing: Timing
  readonly #clock: () => number
  #socket: WebSocket | undefined
  #wanted = false
  #asking = false
  #refusals = 0
  #failures = 0
  #dialled = 0
  #last = 0
  #timer: unknown

  constructor(dial: () => WebSocket, hello: () => Promise<Hello>, listener: Listener, last = 0, timing = realTiming, clock = () => performance.now()) {
    this.#dial = dial
    this.#hello = hello
    this.#listener = listener
    this.#last = last
    this.#timing = timing
    this.#clock = clock
  }

  /** Opens the line, or tries at once where a later try was planned. */
  open(): void {
    if (this.#socket || this.#asking || this.#refusals === mostRefusals) return
    this.#wanted = true
    this.#asking = true
    this.#timing.clearTimer(this.#timer)
    this.#listener.line('opening')
    // Who asks is known before the line opens: the server waits seconds for it, and a busy phone is slow.
    this.#hello().then(
      (hello) => this.#answered(() => this.#connect(hello)),
      () => this.#answered(() => this.#tryLater()),
    )
  }

  #answered(go: () => void): void {
    this.#asking = false
    if (this.#wanted && !this.#socket) go()
  }

  #connect(hello: Hello): void {
    this.#dialled = this.#clock()
    const socket = (this.#socket = this.#dial())
    socket.onopen = () => {
      if (this.#socket === socket) socket.send(JSON.stringify({ ...hello, last: this.#last }))
    }
    socket.onmessage = ({ data }) => {
      if (this.#socket === socket) this.#hear(parse(String(data)))
    }
    socket.onclose = ({ code }) => {
      if (this.#socket === socket) this.#closed(code)
    }
  }

  /** Lets go: the page is left. */
  close(): void {
    this.#wanted = false
    this.#timing.clearTimer(this.#timer)
    const socket = this.#socket
    this.#socket = undefined
    socket?.close()
  }

  /** The network went and came, or the page was out of sight: what looks open may be dead. */
  renew(): void {
    if (!this.#wanted) return
    this.close()
    this.open()
  }

  /** The device says that the network is gone: what is still open hears nothing any more. */
  lose(): void {
    const socket = this.#socket
    if (!socket) return
    this.#closed(0)
    socket.close()
  }

  #hear(frame: ClassFrame | undefined): void {
    if (!frame) return
    this.#failures = 0
    this.#refusals = 0
    this.#listener.line('open')
    if (frame.kind === 'view') {
      if (frame.seq <= this.#last) return // overtaken by a newer one
      this.#last = frame.seq
    }
    this.#listener.frame(frame)
  }

  #closed(code: number): void {
    this.#socket = undefined
    if (code === policyViolation && !this.#wasSlow() && ++this.#refusals === mostRefusals) return this.#listener.line('refused')
    this.#tryLater()
  }

  /** So slow that the server may have closed for want of a hello, and not for what it said. */
  #wasSlow(): boolean {
    return this.#clock() - this.#dialled >= HELLO_PATIENCE_MS
  }

  #tryLater(): void {
    this.#listener.line('away')
    const ceiling = Math.min(longestWait, firstWait * 2 ** this.#failures++)
    this.#timer = this.#timing.setTimer(() => this.open(), ceiling * (0.5 + 0.5 * this.#timing.random()))
  }
}

function parse(text: string): ClassFrame | undefined {
  try {
    const frame = JSON.parse(text) as Partial<ClassFrame> | null
    return typeof frame?.kind === 'string' ? (frame as ClassFrame) : undefined
  } catch {
    return undefined // not ours to judge; the next frame may be whole
  }
}

/** Opens the live line of a class on the server that the page came from. */
export function dialClass(id: string): () => WebSocket {
  const scheme = location.protocol === 'https:' ? 'wss' : 'ws'
  return () => new WebSocket(`${scheme}://${location.host}/api/v1/classes/${encodeURIComponent(id)}/live`)
}
