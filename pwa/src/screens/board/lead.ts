import { signal } from '@preact/signals'
import { act, type Act } from '../../class/desk'
import type { Lead as Key } from '../../class/ask'
import { say } from '../../class/say'

type Send = typeof act

/** Leads one class: what is pressed is done on the server, and the board follows from there. */
export class Lead {
  readonly id: string
  /** Given where the class was handed to this phone or tablet. */
  readonly key: Key | undefined
  readonly failed = signal<string | undefined>(undefined)
  readonly waiting = signal(false)
  readonly #send: Send
  #turn: Promise<unknown> = Promise.resolve()
  #last: string | undefined

  constructor(id: string, key: Key | undefined, send: Send = act) {
    this.id = id
    this.key = key
    this.#send = send
  }

  /**
   * True when it was done. One act after the other: the board may show a step before the
   * server's answer to it is here, and what is pressed then is not lost. A double press is one press.
   */
  do(what: Act): Promise<boolean> {
    const pressed = JSON.stringify(what)
    if (pressed === this.#last) return Promise.resolve(false)
    this.#last = pressed
    this.waiting.value = true
    const done = this.#turn.then(() => this.#do(what)).finally(() => {
      if (this.#last !== pressed) return // something else was pressed meanwhile
      this.#last = undefined
      this.waiting.value = false
    })
    this.#turn = done
    return done
  }

  async #do(what: Act): Promise<boolean> {
    this.failed.value = undefined
    try {
      await this.#send(this.id, what, this.key)
      return true
    } catch (error) {
      this.failed.value = say(error)
      return false
    }
  }
}
