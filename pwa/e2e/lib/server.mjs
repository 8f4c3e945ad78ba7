// The real server, built once, on 127.0.0.1 and a data folder of its own.
import { execFileSync, spawn, spawnSync } from 'node:child_process'
import { existsSync, mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'

const root = fileURLToPath(new URL('../../..', import.meta.url))
const scratch = mkdtempSync(join(tmpdir(), 'lintel-e2e-'))
const binary = process.env.LINTEL_BINARY ?? join(scratch, 'lintel') // a server that is built already, or our own

process.on('exit', () => rmSync(scratch, { recursive: true, force: true }))

function build() {
  if (existsSync(binary)) return
  if (!existsSync(join(root, 'pwa/site/dist/index.html'))) throw new Error('the app is not built: run go generate ./... first')
  execFileSync('go', ['build', '-o', binary, './server'], { cwd: root, stdio: 'inherit' })
}

/** A server that can be killed and started again at the same address over the same data. */
export class Server {
  #process
  #data = mkdtempSync(join(scratch, 'data-'))
  url = ''
  /** The one-time code that makes the first instructor, once the server has printed it. */
  setUpCode = ''

  async start() {
    build()
    const addr = this.url ? new URL(this.url).host : '127.0.0.1:0'
    this.#process = spawn(binary, ['serve', '-addr', addr, '-data', this.#data], { cwd: scratch })
    this.url = await new Promise((resolve, reject) => {
      let said = ''
      const hear = (text) => {
        said += text
        this.setUpCode = /^Set-up code, once: (\S+)$/m.exec(said)?.[1] ?? this.setUpCode
        const found = /http:\/\/127\.0\.0\.1:\d+/.exec(said)
        if (found) resolve(found[0])
      }
      this.#process.stdout.on('data', hear)
      this.#process.stderr.on('data', hear)
      this.#process.once('exit', (code) => reject(new Error(`the server stopped with ${code}: ${said}`)))
    })
    return this
  }

  /** Ends the process at once, as a power cut would. */
  async kill() {
    if (!this.#process || this.#process.exitCode !== null || this.#process.signalCode !== null) return
    const gone = new Promise((resolve) => this.#process.once('exit', resolve))
    this.#process.kill('SIGKILL')
    await gone
  }

  /** Every family of scenes there is. */
  families() {
    build()
    const { stderr } = spawnSync(binary, ['drill'], { cwd: scratch, encoding: 'utf8' })
    return /name a -family: ([^:]+)/.exec(stderr)[1].split(', ')
  }

  /** A scene of a family by its seed and kind, by the program's own count: the first of a few seeds that has a fair one. */
  scene(family) {
    build()
    for (let seed = 1; seed <= 5; seed++) {
      const { status, stdout } = spawnSync(binary, ['drill', '-family', family, '-seed', String(seed), '-json'], { cwd: scratch, encoding: 'utf8', maxBuffer: 1 << 24 })
      if (status === 0) return { family, seed, kind: JSON.parse(stdout).kind }
    }
    throw new Error(`${family} has no fair scene for five seeds`)
  }

  /** Every record that the server holds, read by its own export command. */
  records() {
    const lines = execFileSync(binary, ['export', '-jsonl', '-data', this.#data], { cwd: scratch, encoding: 'utf8' })
    return lines
      .split('\n')
      .filter(Boolean)
      .map((line) => JSON.parse(line))
      .map((line) => line.record ?? line)
      .filter((line) => typeof line.seq === 'number')
  }
}
