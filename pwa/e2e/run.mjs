// Runs every file of tests but those of classes, two at a time, and the longest
// first: begun last, one would go on alone with a core standing idle.
//
//   node e2e/run.mjs
import { readdirSync } from 'node:fs'
import { dirname, join } from 'node:path'
import { run } from 'node:test'
import { tap } from 'node:test/reporters'
import { fileURLToPath } from 'node:url'

const folder = dirname(fileURLToPath(import.meta.url))
// Longest first, by a run on two cores that did nothing else.
const longest = ['screens', 'prop', 'kills', 'log', 'forms', 'updates', 'quota', 'still']
const atOnce = 2
const timeout = 600_000 // ms for one file

const files = readdirSync(folder).filter((name) => name.endsWith('.test.mjs') && !name.startsWith('class'))
const turns = new Map(longest.map((name, turn) => [`${name}.test.mjs`, turn]))
const turn = (name) => turns.get(name) ?? longest.length
const ordered = files.toSorted((a, b) => turn(a) - turn(b) || a.localeCompare(b)).map((name) => join(folder, name))

const tests = run({ files: ordered, concurrency: atOnce, timeout })
tests.on('test:fail', () => (process.exitCode = 1))
tests.compose(tap).pipe(process.stdout)
