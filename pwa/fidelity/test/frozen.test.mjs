import { createHash } from 'node:crypto'
import { readFileSync, readdirSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

// The instrument was finished before the picture was tuned to be true. Whoever
// changes it later changes the measure of everything measured with it: say here
// when and why, above the new fingerprint, and measure anew.
//
//   2026-11-25  frozen, before the renderer was tuned
const FINGERPRINT = 'cb413a37144424a94d33080014354786533ef728800ce710220efbf9a5a42f0d'

const folder = fileURLToPath(new URL('../estimator/', import.meta.url))
const files = readdirSync(folder).toSorted()
const source = (name) => readFileSync(folder + name, 'utf8')

test('the instrument is as it was frozen', () => {
  const hash = createHash('sha256')
  for (const name of files) hash.update(`${name}\n${source(name)}`)
  expect(hash.digest('hex')).toBe(FINGERPRINT)
})

// It may read photographs and nothing that the renderer knows.
const MAY_IMPORT = new Set(['node:fs', 'fast-png', ...files.map((name) => `./${name}`)])

test('the instrument reads PNG files and imports nothing of the renderer', () => {
  for (const name of files) {
    const imported = [...source(name).matchAll(/(?:from|import)\s*\(?\s*['"]([^'"]+)['"]/g)].map((match) => match[1])
    for (const one of imported) expect(MAY_IMPORT.has(one), `${name} imports ${one}`).toBe(true)
  }
  expect(files).toEqual(['cover.mjs', 'index.mjs', 'motion.mjs', 'strip.mjs', 'tone.mjs'])
})
