// The instrument on a thread of its own, so that the next scene is drawn while
// it looks at this one.
import { Worker, isMainThread, parentPort } from 'node:worker_threads'
import { fileURLToPath } from 'node:url'
import { estimate } from '../estimator/index.mjs'

export class Eye {
  #worker = new Worker(fileURLToPath(import.meta.url))

  look(sighting) {
    return new Promise((resolve, reject) => {
      const done = (reply) => {
        this.#worker.off('error', reject)
        if (reply.error) reject(new Error(reply.error))
        else resolve(reply.seen)
      }
      this.#worker.once('message', done)
      this.#worker.once('error', reject)
      this.#worker.postMessage(sighting)
    })
  }

  close = () => this.#worker.terminate()
}

if (!isMainThread) {
  parentPort.on('message', (sighting) => {
    try {
      parentPort.postMessage({ seen: estimate(sighting) })
    } catch (error) {
      parentPort.postMessage({ error: error.message })
    }
  })
}
