// Starts the engine in Node as the worker does on a phone: for tests and for
// measuring.
//   load(wasmPath, execPath) -> the object that main.go calls lintel
import { readFile } from 'node:fs/promises'
import { pathToFileURL } from 'node:url'

export async function load(wasmPath, execPath) {
  await import(pathToFileURL(execPath).href) // Go's own start-up script sets globalThis.Go
  const go = new globalThis.Go()
  const { instance } = await WebAssembly.instantiate(await readFile(wasmPath), go.importObject)
  void go.run(instance) // never resolves: the program waits for calls
  return globalThis.lintel
}
