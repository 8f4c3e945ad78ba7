import { mkdtempSync, rmSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { onTestFinished } from 'vitest'

/** An empty folder that goes with the test it was made in. */
export function scratch() {
  const folder = mkdtempSync(join(tmpdir(), 'lintel-fidelity-test-'))
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }))
  return folder
}
