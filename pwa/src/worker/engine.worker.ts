// Hosts the engine: Go compiled to WebAssembly, one call at a time. It holds no
// physics, rule or score of its own; it passes plain values across.
import './wasm_exec.js'
import wasmUrl from './lintel.wasm?url'
import { UNSTARTED, type Method, type Problem, type Reply, type Request, type Unstarted } from './protocol'

interface GoProgram {
  importObject: WebAssembly.Imports
  run(instance: WebAssembly.Instance): Promise<void>
}

type Bindings = Record<Method, (...args: unknown[]) => unknown>

declare global {
  var Go: new () => GoProgram
  var lintel: Bindings | undefined
}

let started: Promise<Bindings> | undefined

async function start(): Promise<Bindings> {
  const go = new Go()
  const instance = await instantiate(go.importObject)
  void go.run(instance) // never resolves: the Go program waits for calls
  if (globalThis.lintel === undefined) throw new Error('the engine started without its calls')
  return globalThis.lintel
}

async function instantiate(imports: WebAssembly.Imports): Promise<WebAssembly.Instance> {
  const response = await fetch(wasmUrl)
  if (!response.ok) throw new Error(`the engine answered ${response.status}`)
  const streams = response.headers.get('content-type')?.startsWith('application/wasm') ?? false
  const source = streams
    ? await WebAssembly.instantiateStreaming(response, imports)
    : await WebAssembly.instantiate(await response.arrayBuffer(), imports)
  return source.instance
}

self.onmessage = async (message: MessageEvent<Request>) => {
  const { id, method, args } = message.data
  try {
    const lintel = await (started ??= start())
    answer(id, method, args, lintel[method](...args))
  } catch (error) {
    if (globalThis.lintel) return reply({ id, error: { where: '', what: String(error), do: 'reload the page' } })
    started = undefined // the next call tries to load it again
    const why: Unstarted = typeof WebAssembly === 'undefined' ? 'no_webassembly' : 'not_here'
    reply({ id, error: { where: UNSTARTED, what: String(error), do: why } })
  }
}

/** Sends a result back; a frame travels by transfer, not by copy. */
function answer(id: number, method: Method, args: unknown[], result: unknown): void {
  const problem = (result as { error?: Problem } | null | undefined)?.error
  if (problem) return reply({ id, error: problem })
  const frame = args[2]
  if (method === 'advance' && frame instanceof Float64Array) {
    return reply({ id, gives: frame }, [frame.buffer])
  }
  reply({ id, gives: result ?? null })
}

function reply(message: Reply, transfer: Transferable[] = []): void {
  self.postMessage(message, { transfer })
}
