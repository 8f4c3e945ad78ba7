// Takes a TypeScript module of the app into a plain script, as the app's own
// build would read it.
import { fileURLToPath } from 'node:url'
import { runnerImport } from 'vite'

const root = fileURLToPath(new URL('../..', import.meta.url))

export async function load(path) {
  const { module } = await runnerImport(`${root}/${path}`, { root, configFile: false, logLevel: 'error' })
  return module
}
