import { readdirSync, readFileSync } from 'node:fs'
import { dirname, join, relative, sep } from 'node:path'
import { fileURLToPath } from 'node:url'
import { expect, test } from 'vitest'

// A folder imports from those before it and from no other. A change that breaks this
// belongs somewhere else; the table is not there to be changed with it.
const layers = ['wire.gen', 'generated', 'kept-keys', 'buildings', 'words', 'worker', 'local', 'practice', 'render', 'sw', 'ui', 'class', 'app', 'screens', 'main']
// These two put the screens in their places.
const composing = new Set(['app/app.tsx', 'app/screens.ts'])

const root = dirname(fileURLToPath(import.meta.url))

/** Where a path from here lies: its folder, or the file itself at the top. */
const layerOf = (path: string) => path.split(sep)[0]!.replace(/\.(ts|tsx|json)$/, '')

/** What is wrong with the imports of one file. */
function against(file: string, text: string): string[] {
  const own = layers.indexOf(layerOf(file))
  return [...text.matchAll(/(?:from|import)\s*\(?\s*'(\.[^']*)'/g)]
    .map(([, path]) => layerOf(relative(root, join(root, dirname(file), path!))))
    .filter((to) => to !== '..' && to !== layerOf(file) && layers.indexOf(to) >= own)
    .map((to) => `${file} imports ${to}`)
}

const files = readdirSync(root, { recursive: true, encoding: 'utf8' }).filter((path) => /\.tsx?$/.test(path) && !/\.test\.|\.d\.ts$/.test(path))

test('every folder has its place', () => {
  expect([...new Set(files.map(layerOf))].filter((layer) => !layers.includes(layer))).toEqual([])
})

test('no folder imports against the order', () => {
  const wrong = files.filter((file) => !composing.has(file)).flatMap((file) => against(file, readFileSync(join(root, file), 'utf8')))
  expect(wrong).toEqual([])
})

test('an import against it is found', () => {
  expect(against(join('class', 'stops.ts'), "import { x } from '../screens/drill/x'")).toEqual([`${join('class', 'stops.ts')} imports screens`])
  expect(against(join('class', 'stops.ts'), "import { x } from '../words/x'\nimport y from './y'\nawait import('../ui/z')")).toEqual([])
})
