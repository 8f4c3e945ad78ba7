import { effect } from '@preact/signals'
import { language } from '../../words/language'
import { units } from '../../words/units'
import type { Drawn, Told } from './told'

// The page's side of the thread that draws. It is started with the first canvas
// and stays for as long as the page does: the next picture finds it ready.

interface Port { postMessage(told: Told, transfer?: Transferable[]): void }

let port: Port | undefined
const canLend = typeof HTMLCanvasElement !== 'undefined' && 'transferControlToOffscreen' in HTMLCanvasElement.prototype
let threads = canLend
let watched = false
let last = 0
const lost = new Set<() => void>()

/** A canvas that is lent to the thread that draws; for good, as no canvas can be taken back. */
export class Lent {
  readonly #id = ++last
  readonly #port: Port
  readonly #lost: () => void

  /** `gone` is called once where nothing draws on this canvas: the thread cannot run, or could not be fetched. The next canvas may be drawn on. */
  constructor(kind: 'scene' | 'swatch', canvas: HTMLCanvasElement, gone: () => void) {
    this.#port = port ??= begin()
    this.#lost = gone
    lost.add(gone)
    const sheet = threads ? canvas.transferControlToOffscreen() : canvas
    this.#port.postMessage({ id: this.#id, kind, canvas: sheet }, threads ? [sheet as OffscreenCanvas] : [])
  }

  tell(told: Rest<Told>, transfer?: Transferable[]): void {
    this.#port.postMessage({ id: this.#id, ...told } as Told, transfer)
  }

  leave(): void {
    lost.delete(this.#lost)
    this.tell({ gone: true })
  }
}

type Rest<T> = T extends { id: number } ? Omit<T, 'id'> : never

function begin(): Port {
  port = threads ? startThread() : playHere()
  if (watched) tellLook()
  else watchLook()
  return port
}

const calm = () => matchMedia('(prefers-reduced-motion: reduce)')

function tellLook(): void {
  port?.postMessage({ page: { theme: document.documentElement.dataset['theme'], us: units.value === 'us', calm: calm().matches } })
}

function watchLook(): void {
  watched = true
  new MutationObserver(tellLook).observe(document.documentElement, { attributeFilter: ['data-theme'] })
  calm().addEventListener('change', tellLook)
  effect(tellLook)
}

/** It has no store, and is named by the language that it writes in (words/language.ts). */
function startThread(): Port {
  const worker = new Worker(new URL('./draw.worker.ts', import.meta.url), { type: 'module', name: language })
  worker.onmessage = ({ data }: MessageEvent<Drawn>) => note(data)
  worker.onerror = () => {
    worker.terminate()
    anew(false)
  }
  return worker
}

const AGAIN_MS = 2_000 // until a picture is tried again that could not be fetched; chosen by us

/** On the page's own thread, where a canvas cannot be lent. */
function playHere(): Port {
  const players = import('./players').then(({ Players }) => new Players(note))
  // Neither this nor the thread could be fetched: the server is away, and where no copy is kept that mends itself only when it is back.
  players.catch(() => setTimeout(() => anew(canLend), AGAIN_MS))
  return { postMessage: (told) => void players.then((one) => one.tell(told), () => {}) }
}

/** Every picture asks for another canvas. */
function anew(onThread: boolean): void {
  threads = onThread
  port = undefined
  const all = [...lost]
  lost.clear()
  for (const gone of all) gone()
}

const NOTED = 600 // about ten seconds of pictures are kept for whoever measures
let noted = 0

/** Leaves the script time of pictures in the browser's own timeline, and not more of them than a few. */
function note({ drawn }: Drawn): void {
  for (let k = 0; k < drawn.length; k += 2) {
    if (++noted % NOTED === 0) performance.clearMeasures('lintel-picture')
    performance.measure('lintel-picture', { start: Math.max(0, drawn[k]! - performance.timeOrigin), duration: drawn[k + 1]! })
  }
}
