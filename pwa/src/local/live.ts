import type { Self } from './self'
import type { Timing } from './sync'

/** What the server says on the live socket. */
type Message = { kind: 'acked'; seq: number } | { kind: 'version'; engine: string; content: string }

/** What the live socket tells the app. */
export interface Listener {
  opened(): void
  acked(seq: number): void
  version(engine: string, content: string): void
}

// Tries again after 5 s, then ever later up to 5 min, with a random share. Chosen by us.
const firstWait = 5_000
const longestWait = 300_000

/** Keeps a socket open while the page is in sight: by it one hears at once that the server is back. */
export class Live {
  readonly #listener: Listener
  readonly #timing: Timing
  readonly #dial: () => WebSocket
  #socket: WebSocket | undefined
  #failures = 0
  #timer: unknown

  constructor(listener: Listener, timing: Timing, dial: () => WebSocket = dialServer) {
    this.#listener = listener
    this.#timing = timing
    this.#dial = dial
  }

  open(self: Self): void {
    if (this.#socket || !self.registered) return
    this.#timing.clearTimer(this.#timer)
    const socket = (this.#socket = this.#dial())
    socket.onopen = () => {
      this.#failures = 0
      socket.send(JSON.stringify({ device: self.device, secret: self.secret }))
      this.#listener.opened()
    }
    socket.onmessage = ({ data }) => this.#hear(String(data))
    socket.onclose = () => {
      if (this.#socket !== socket) return
      this.#socket = undefined
      const ceiling = Math.min(longestWait, firstWait * 2 ** this.#failures++)
      this.#timer = this.#timing.setTimer(() => this.open(self), ceiling * (0.5 + 0.5 * this.#timing.random()))
    }
  }

  close(): void {
    this.#timing.clearTimer(this.#timer)
    const socket = this.#socket
    this.#socket = undefined
    socket?.close()
  }

  #hear(text: string): void {
    const message = parse(text)
    if (message?.kind === 'acked') this.#listener.acked(message.seq)
    else if (message?.kind === 'version') this.#listener.version(message.engine, message.content)
  }
}

function parse(text: string): Message | undefined {
  try {
    return JSON.parse(text) as Message
  } catch {
    return undefined // not ours to judge; the next message may be whole
  }
}

function dialServer(): WebSocket {
  return new WebSocket(`${location.protocol === 'https:' ? 'wss' : 'ws'}://${location.host}/api/v1/live`)
}
