import { useEffect, useRef, useState } from 'preact/hooks'
import type { ClassDoor, ClassFrame, ClassPlaceView } from '../wire.gen'
import { dressed, sentences } from './dress'
import { ClassSocket, dialClass, type Hello, type Line } from './socket'

/** What has been heard of a class so far: the newest of each part. */
export interface Heard {
  /** The seq of the view held, 0 for none. */
  seq: number
  phone?: ClassFrame['phone']
  board?: ClassFrame['board']
  projector?: ClassFrame['projector']
  places?: ClassPlaceView[]
  here?: number[]
  door?: ClassDoor
}

export interface Live {
  heard: Heard
  line: Line
  /** The server's clock now, in ms. */
  now(): number
}

/** Takes one frame into what is known: parts that it does not bring stay as they were. */
export function take(heard: Heard, frame: ClassFrame): Heard {
  const { kind, seq, phone, board, projector, places, here, door } = frame
  const brought = { phone, board, projector, places, here, door }
  const parts = Object.fromEntries(Object.entries(brought).filter(([, part]) => part !== undefined))
  return { ...heard, ...parts, seq: kind === 'view' ? seq : heard.seq }
}

/** Listens to a class for as long as the component is shown. `kept` is what a reload begins with. */
export function useLive(id: string, hello: () => Promise<Hello>, kept: Heard = { seq: 0 }): Live {
  const [heard, setHeard] = useState<Heard>(kept)
  const [line, setLine] = useState<Line>('opening')
  const ahead = useRef(0)
  useEffect(() => {
    let all: Awaited<ReturnType<typeof sentences>> = {}
    let wanted = true
    const hear = (frame: ClassFrame) => {
      ahead.current = frame.now_ms - Date.now()
      setHeard((before) => take(before, dressed(frame, all)))
    }
    const socket = new ClassSocket(dialClass(id), hello, { frame: hear, line: setLine }, kept.seq)
    void sentences().then((known) => {
      all = known
      if (wanted) socket.open()
    })
    const stop = followPage(socket)
    return () => {
      wanted = false
      stop()
      socket.close()
    }
  }, [id])
  return { heard, line, now: () => Date.now() + ahead.current }
}

// A page that was out of sight for longer than this looks again at once: phones
// end the sockets of sleeping pages without telling them. Chosen by us.
const longAwayMS = 3_000

/** Opens the line anew when the network is back or the page is seen again after a while, and lets a lost one go. */
function followPage(socket: Pick<ClassSocket, 'renew' | 'lose'>): () => void {
  let hiddenAt = Date.now()
  const seen = () => {
    if (document.hidden) hiddenAt = Date.now()
    else if (Date.now() - hiddenAt > longAwayMS) socket.renew()
  }
  const online = () => socket.renew()
  const offline = () => socket.lose()
  document.addEventListener('visibilitychange', seen)
  addEventListener('online', online)
  addEventListener('offline', offline)
  return () => {
    document.removeEventListener('visibilitychange', seen)
    removeEventListener('online', online)
    removeEventListener('offline', offline)
  }
}
