// What a long run has measured so far, a line a scene, so that one that was
// stopped goes on where it was. What another picture or another instrument
// measured is never taken over: the first line holds the fingerprint of both.
import { createHash } from 'node:crypto'
import { appendFileSync, existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'

const SEEN_BY = ['../../src/render/', '../estimator/', '../lib/', '../player/', '../../src/worker/lintel.wasm'].map((one) => fileURLToPath(new URL(one, import.meta.url)))

/** A fingerprint of everything that a measurement goes through. */
export function fingerprint(run) {
  const hash = createHash('sha256').update(JSON.stringify(run))
  for (const place of SEEN_BY) {
    const files = place.endsWith('/') ? readdirSync(place, { recursive: true, withFileTypes: true }).filter((entry) => entry.isFile()).map((entry) => `${entry.parentPath}/${entry.name}`) : [place]
    for (const file of files.toSorted()) hash.update(readFileSync(file))
  }
  return hash.digest('hex')
}

export class Record {
  #path
  #known = new Map()

  /** Opens the record of a run in a file, or, without one, keeps nothing. */
  constructor(path, run) {
    this.#path = path
    if (!path) return
    const first = JSON.stringify({ fingerprint: fingerprint(run) })
    const text = existsSync(path) ? readFileSync(path, 'utf8') : ''
    const [head, ...lines] = text.trimEnd().split('\n')
    if (head !== first) {
      writeFileSync(path, `${first}\n`)
      return
    }
    if (!text.endsWith('\n')) appendFileSync(path, '\n') // stopped in the middle of a line
    for (const line of lines) {
      const { key, seen } = parsed(line)
      if (key) this.#known.set(key, seen)
    }
  }

  /** What was seen of a scene before. */
  seen = (key) => this.#known.get(key)

  /** Takes note of a scene; what could not be recovered is null, as JSON has no other word. */
  add(key, seen, scene) {
    if (this.#path) appendFileSync(this.#path, `${JSON.stringify({ key, seen, ...scene })}\n`)
  }
}

/** A line, or nothing where a run was stopped while it wrote it. */
function parsed(line) {
  try {
    return JSON.parse(line)
  } catch {
    return {}
  }
}
