import { readdirSync, readFileSync, statSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { brotliCompressSync, constants } from 'node:zlib'
import type { Plugin } from 'vite'

const worthIt = /\.(?:html|js|css|wasm|svg|json|webmanifest)$/

/** Writes FILE.br beside every text or wasm file, for the server to send as it is. */
export function brotli(): Plugin {
  let outDir = ''
  return {
    name: 'lintel-brotli',
    apply: 'build',
    enforce: 'post',
    configResolved: (config) => {
      outDir = config.build.outDir
    },
    closeBundle: { order: 'post', sequential: true, handler: () => compressTree(outDir) },
  }
}

function compressTree(folder: string): void {
  for (const name of readdirSync(folder)) {
    const path = join(folder, name)
    if (statSync(path).isDirectory()) compressTree(path)
    else if (worthIt.test(name)) compressFile(path)
  }
}

function compressFile(path: string): void {
  const plain = readFileSync(path)
  const packed = brotliCompressSync(plain, {
    params: { [constants.BROTLI_PARAM_QUALITY]: 11, [constants.BROTLI_PARAM_SIZE_HINT]: plain.length },
  })
  if (packed.length < plain.length) writeFileSync(`${path}.br`, packed)
}
