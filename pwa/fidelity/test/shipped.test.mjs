import { existsSync, readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

const pwa = fileURLToPath(new URL('../../', import.meta.url))
const filesIn = (folder) => readdirSync(folder, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => `${entry.parentPath}/${entry.name}`)

test('nothing of the app imports the instrument or the scene player', () => {
  const guilty = filesIn(`${pwa}src`).filter((path) => /\.tsx?$/.test(path) && /from '[^']*fidelity/.test(readFileSync(path, 'utf8')))
  expect(guilty).toEqual([])
})

test.skipIf(!existsSync(`${pwa}site/dist`))('no build of the app holds the scene player', () => {
  const guilty = filesIn(`${pwa}site/dist`).filter((path) => /\.(js|html)$/.test(path) && readFileSync(path, 'utf8').includes('lintelPlayer'))
  expect(guilty).toEqual([])
})
